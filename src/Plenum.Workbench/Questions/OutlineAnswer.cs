using System.Collections.Immutable;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>
/// The lines of an outline: elements in the order of the breakdown, and after the parts of an open element one line
/// that says what is missing or too much, if they do not add up to it. Lines are made only when asked for.
/// </summary>
public sealed class OutlineAnswer
{
    private const int LevelsWithWholeCode = 3;

    private readonly Project project;
    private readonly ImmutableHashSet<int> open;
    private readonly int[] lines;

    /// <param name="lines">Positions of elements; the complement of a position for the line after its parts.</param>
    internal OutlineAnswer(Project project, ImmutableHashSet<int> open, int[] lines)
    {
        this.project = project;
        this.open = open;
        this.lines = lines;
    }

    /// <summary>Number of lines.</summary>
    public int Count => lines.Length;

    /// <summary>The lines from one on, as many as there are.</summary>
    public IReadOnlyList<OutlineLine> Window(int first, int count)
    {
        first = Math.Clamp(first, 0, lines.Length);
        var window = new OutlineLine[Math.Clamp(count, 0, lines.Length - first)];
        for (var i = 0; i < window.Length; i++)
        {
            window[i] = Line(first + i);
        }

        return window;
    }

    /// <summary>The line on which an element stands; −1 while a branch above it is closed.</summary>
    /// <param name="position">The element's position.</param>
    public int LineOf(int position)
    {
        int low = 0,
            high = lines.Length - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = Order(lines[middle]).CompareTo((2L * position) + 1);
            if (order == 0)
            {
                return middle;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return -1;
    }

    /// <summary>The line after an element and all lines that belong to it.</summary>
    public int LineAfter(int position)
    {
        var at = LineOf(position) + 1;
        while (at < lines.Length && IsWithin(lines[at] >= 0 ? lines[at] : ~lines[at], position))
        {
            at++;
        }

        return at;
    }

    private bool IsWithin(int row, int position) =>
        row >= position && row < project.Tree.SubtreeEnd[position];

    /// <summary>Lines come in the order of positions; what is missing stands before the element after the subtree.</summary>
    private long Order(int line) =>
        line >= 0 ? (2L * line) + 1 : 2L * project.Tree.SubtreeEnd[~line];

    private OutlineLine Line(int at) =>
        lines[at] >= 0 ? ElementLine(at, lines[at]) : GapLine(at, ~lines[at]);

    private OutlineLine ElementLine(int at, int row)
    {
        var tree = project.Tree;
        var sizes = ElementSizes.Of(project);
        var parent = tree.Parent[row];
        var whole = parent < 0 ? Math.Max(sizes.Size(row), sizes.Whole[row]) : sizes.Whole[parent];
        var size = parent < 0 ? whole : sizes.Size(row);
        var gap = project.Totals.Gap[row];
        var person = sizes.Person[row];
        return new OutlineLine(at, row, tree.Code(row), tree.Name(row), tree.Level[row])
        {
            CodePart = CodePart(row),
            HasParts = tree.HasChildren(row),
            IsOpen = tree.HasChildren(row) && open.Contains(tree.Elements.Ids[row]),
            IsPackage = tree.PackageOfRow[row] >= 0,
            ParentLine = parent < 0 ? -1 : LineOf(parent),
            Place = parent < 0 ? 1 : sizes.Place[row],
            Sisters = parent < 0 ? 1 : sizes.Parts[parent],
            Kind = tree.Kind(row),
            Split = tree.HasChildren(row) ? tree.Elements.Texts(ElementTable.Split)[row] : null,
            Parts = sizes.Parts[row],
            Share = Ratio.Of(size, whole),
            Start = parent < 0 ? 0 : Ratio.Of(sizes.Before[row], whole),
            Budget = Major(project.Totals.Budget[row]),
            Allotted =
                project.Totals.Allotted[row] is var allotted && Cell.IsGiven(allotted)
                    ? Major(allotted)
                    : null,
            Gap = Cell.IsGiven(gap) ? Major(gap) : null,
            Person = person == Cell.NoInt ? null : PersonNames.Of(project, person),
            PersonIsOwn = tree.Elements.Ints(ElementTable.Person)[row] != Cell.NoInt,
        };
    }

    private OutlineLine GapLine(int at, int row)
    {
        var tree = project.Tree;
        var sizes = ElementSizes.Of(project);
        var gap = project.Totals.Gap[row];
        return new OutlineLine(at, row, tree.Code(row), tree.Name(row), tree.Level[row] + 1)
        {
            IsRest = true,
            ParentLine = LineOf(row),
            Gap = Major(gap),
            Allotted = Major(project.Totals.Allotted[row]),
            Share = Ratio.Of(Math.Abs(gap), gap > 0 ? sizes.Whole[row] : sizes.Size(row)),
            Start = gap > 0 ? Ratio.Of(sizes.Whole[row] - gap, sizes.Whole[row]) : null,
        };
    }

    /// <summary>The whole code on the first levels; below them only what a code adds to its parent's.</summary>
    private string CodePart(int row)
    {
        var tree = project.Tree;
        var code = tree.Code(row);
        if (tree.Level[row] <= LevelsWithWholeCode)
        {
            return code;
        }

        var above = tree.Code(tree.Parent[row]);
        return
            code.StartsWith(above, StringComparison.Ordinal)
            && code.AsSpan(above.Length).TrimStart("./-").Length is var rest and > 0
            && rest < code.Length - above.Length
            ? code[^rest..]
            : code;
    }

    private decimal Major(long minorUnits) => project.Settings.Currency.ToMajorUnits(minorUnits);
}

/// <summary>One line of an outline. Money in major units; shares 0 to 1, null where there is nothing to share.</summary>
/// <param name="Number">Number of the line, from 0.</param>
/// <param name="Position">The element's position; of a line that says what is missing that of the element above.</param>
/// <param name="Code">The element's code.</param>
/// <param name="Name">The element's name.</param>
/// <param name="Level">Its level, 1 for the root.</param>
public sealed record OutlineLine(int Number, int Position, string Code, string Name, int Level)
{
    /// <summary>What of the code stands on the line.</summary>
    public string CodePart { get; init; } = "";

    /// <summary>It is no element but says what of <see cref="Code"/> belongs to no part, or what its parts have too much.</summary>
    public bool IsRest { get; init; }

    public bool HasParts { get; init; }

    public bool IsOpen { get; init; }

    public bool IsPackage { get; init; }

    /// <summary>Line of the parent; −1 for the root.</summary>
    public int ParentLine { get; init; } = -1;

    /// <summary>Place among its sisters, from 1.</summary>
    public int Place { get; init; }

    /// <summary>Number of the parent's parts.</summary>
    public int Sisters { get; init; }

    /// <summary>A number of <see cref="ElementTable.Kinds"/>.</summary>
    public int Kind { get; init; }

    public string? Split { get; init; }

    public int Parts { get; init; }

    /// <summary>Share of its parent.</summary>
    public decimal? Share { get; init; }

    /// <summary>Where in the parent it begins.</summary>
    public decimal? Start { get; init; }

    public decimal Budget { get; init; }

    public decimal? Allotted { get; init; }

    /// <summary>Positive: belongs to no part; negative: the parts have more than the whole; null: nothing to compare.</summary>
    public decimal? Gap { get; init; }

    public string? Person { get; init; }

    /// <summary>The element names the person itself; else it is that of an element above.</summary>
    public bool PersonIsOwn { get; init; }
}
