using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>Parts against activities: what the columns are, how much is decided, and any window of its lines.</summary>
public sealed class PartsAnswer
{
    private readonly Project project;
    private readonly ActivityMatrix matrix;
    private readonly int[] columnOf;
    private readonly long[] mostHours;

    // a line is the position of a part, or ~ the number of a group
    private readonly List<int> lines = [];
    private readonly List<(int Parent, int Undecided)> groups = [];

    internal PartsAnswer(
        Project project,
        int under,
        (int First, int End) parts,
        IReadOnlyList<int> rows,
        int withoutType
    )
    {
        this.project = project;
        matrix = project.ActivityMatrix;
        Under = under;
        WithoutType = withoutType;
        (Decided, Cells) = matrix.Count(parts.First, parts.End);
        Parts = parts.End - parts.First;
        mostHours = matrix.MostHours(parts.First, parts.End);
        var undecided = matrix.Undecided(parts.First, parts.End);
        var used = Used(parts.First, parts.End);
        columnOf = [.. Enumerable.Range(0, matrix.Columns.Count).Where(column => used[column])];
        Columns =
        [
            .. columnOf.Select(column => new PartsColumn(
                matrix.Columns[column].Activity,
                matrix.Columns[column].Facet,
                undecided[column]
            )),
        ];
        Fill(rows);
    }

    /// <summary>Position of the element that it is about; 0 for the whole project.</summary>
    public int Under { get; }

    /// <summary>Its name; that of the project for the whole.</summary>
    public string Name => IsEmpty ? project.Settings.Name : project.Tree.Name(Under);

    /// <summary>Nothing is broken down yet.</summary>
    public bool IsEmpty => project.Tree.Count == 0;

    public IReadOnlyList<PartsColumn> Columns { get; }

    /// <summary>Parts with a work set in the range, whether shown or not.</summary>
    public int Parts { get; }

    public int Decided { get; }

    public int Cells { get; }

    /// <summary>Cells of the whole project, and how many are decided.</summary>
    public (int Decided, int Cells) Whole => (matrix.DecidedCount, matrix.CellCount);

    /// <summary>Elements of the range that could have a part type and have none.</summary>
    public int WithoutType { get; }

    /// <summary>Number of lines, groups among them.</summary>
    public int Count => lines.Count;

    /// <summary>Some of the lines, in order.</summary>
    public IReadOnlyList<PartsLine> Window(int first, int count)
    {
        List<PartsLine> window = [];
        for (var line = first; line < Math.Min(first + count, lines.Count); line++)
        {
            window.Add(lines[line] < 0 ? GroupLine(line, ~lines[line]) : PartLine(line));
        }

        return window;
    }

    /// <summary>Number of the line of the element at a position, or of the first below it; −1 for none.</summary>
    public int LineOf(int position)
    {
        var end = project.Tree.SubtreeEnd[position];
        return lines.FindIndex(row => row >= position && row < end);
    }

    /// <summary>The parts of a range of lines, groups left out.</summary>
    public IReadOnlyList<int> PartIds(int first, int last) =>
        [
            .. Enumerable
                .Range(first, Math.Max(0, Math.Min(last, Count - 1) - first + 1))
                .Where(line => lines[line] >= 0)
                .Select(line => project.Tree.Elements.Ids[lines[line]]),
        ];

    /// <summary>The cell of a line in a column of this answer; null on a group or where the part does not need it.</summary>
    public PartsCell? CellAt(int line, int column) =>
        line >= 0
        && line < Count
        && column >= 0
        && column < Columns.Count
        && lines[line] >= 0
        && matrix.PartAt(lines[line]) is var part and >= 0
        && matrix.CellOf(part, columnOf[column]) is { } cell
            ? Shown(cell)
            : null;

    /// <summary>Id of the element of a line; 0 on a group.</summary>
    public int IdAt(int line) =>
        line >= 0 && line < Count && lines[line] >= 0 ? project.Tree.Elements.Ids[lines[line]] : 0;

    private void Fill(IReadOnlyList<int> rows)
    {
        var tree = project.Tree;
        foreach (var row in rows)
        {
            var parent = tree.Parent[row];
            if (groups.Count == 0 || groups[^1].Parent != parent)
            {
                lines.Add(~groups.Count);
                groups.Add((parent, 0));
            }

            lines.Add(row);
            if (matrix.PartAt(row) is var part and >= 0)
            {
                var (decided, cells) = matrix.Count(part, part + 1);
                groups[^1] = (parent, groups[^1].Undecided + cells - decided);
            }
        }
    }

    private bool[] Used(int first, int end)
    {
        var used = new bool[matrix.Columns.Count];
        for (var part = first; part < end; part++)
        {
            for (var column = 0; column < used.Length; column++)
            {
                used[column] |= matrix.Needs(part, column);
            }
        }

        return used;
    }

    private PartsLine GroupLine(int line, int group)
    {
        var tree = project.Tree;
        var parent = groups[group].Parent;
        return new PartsLine(
            line,
            parent,
            tree.Elements.Ids[parent],
            tree.Code(parent),
            tree.Name(parent)
        )
        {
            IsGroup = true,
            Undecided = groups[group].Undecided,
        };
    }

    private PartsLine PartLine(int line)
    {
        var tree = project.Tree;
        var row = lines[line];
        var part = matrix.PartAt(row);
        var (decided, cells) = part < 0 ? (0, 0) : matrix.Count(part, part + 1);
        var type = tree.Elements.Ints(ElementTable.PartType)[row];
        return new PartsLine(line, row, tree.Elements.Ids[row], tree.Code(row), tree.Name(row))
        {
            Type = Cell.IsGiven(type) ? PartTypes.NameOf(project, type) : null,
            Person = PersonAt(row) is var person and > 0 ? PersonNames.Of(project, person) : null,
            Decided = decided,
            Undecided = cells - decided,
            Cells =
                part < 0
                    ? []
                    :
                    [
                        .. columnOf.Select(column =>
                            matrix.CellOf(part, column) is { } cell ? Shown(cell) : null
                        ),
                    ],
        };
    }

    private PartsCell Shown(MatrixCell cell) =>
        new(
            matrix.Columns[cell.Column].Activity,
            cell.State,
            cell.Hours / 100m,
            mostHours[cell.Column] == 0 ? 0 : (double)cell.Hours / mostHours[cell.Column],
            cell.PackageRow < 0 ? null : project.Tree.Code(cell.PackageRow),
            cell.ReasonRow < 0
                ? null
                : project[NotNeededTable.Definition].Texts(NotNeededTable.Reason)[cell.ReasonRow]
        );

    /// <summary>Id of the person in charge, inherited; 0 for nobody.</summary>
    private int PersonAt(int row)
    {
        var persons = project.Tree.Elements.Ints(ElementTable.Person);
        for (var at = row; at >= 0; at = project.Tree.Parent[at])
        {
            if (Cell.IsGiven(persons[at]))
            {
                return persons[at];
            }
        }

        return 0;
    }
}

/// <summary>A column of the matrix as it is shown.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="Facet">Its facet; empty for none.</param>
/// <param name="Undecided">Cells below it that are not decided, in the range.</param>
public sealed record PartsColumn(string Activity, string Facet, int Undecided);

/// <summary>A line: a part with its cells, or the element that the parts below it belong to.</summary>
/// <param name="Number">Number of the line, from 0.</param>
/// <param name="Position">Position of the element.</param>
/// <param name="Id">Id of the element.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
public sealed record PartsLine(int Number, int Position, int Id, string Code, string Name)
{
    public bool IsGroup { get; init; }

    /// <summary>Name of the part type; null for none.</summary>
    public string? Type { get; init; }

    /// <summary>Name of the person in charge; null for nobody.</summary>
    public string? Person { get; init; }

    public int Decided { get; init; }

    public int Undecided { get; init; }

    /// <summary>A cell for each column, null where the part does not need it; none without a work set.</summary>
    public IReadOnlyList<PartsCell?> Cells { get; init; } = [];

    /// <summary>What its code has beyond that of the element above, without the point.</summary>
    public string CodePart =>
        Code.LastIndexOf('.') is var point and > 0 ? Code[(point + 1)..] : Code;
}

/// <summary>A cell as it is shown.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="State">What is known.</param>
/// <param name="Hours">Hours of what is planned.</param>
/// <param name="Part">Those hours as a part of the most in the column, 0 to 1.</param>
/// <param name="Package">Code of the package that carries it out; null for none.</param>
/// <param name="Reason">Why it is not needed; null for none.</param>
public sealed record PartsCell(
    string Activity,
    ActivityState State,
    decimal Hours,
    double Part,
    string? Package,
    string? Reason
);
