using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>Parts of two logics stand side by side under one element.</summary>
public sealed class TwoLogicsRule(ElementTree tree, SplitReadings readings) : ElementRule(tree)
{
    public override string Name => "two_logics";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A split follows one logic. Where places and parts, or stages and parts, stand side by side, the same work can be "
        + "looked for in two of them and some of it is in neither.";

    public override string Remedy =>
        "Move the part that follows another logic to where it belongs, or split once more on a level of its own.";

    public override string Source =>
        "GAO-20-195G and MIL-STD-881F (products, with functions inside them); the reading of names is a definition of our own";

    protected override string? Message(int row)
    {
        if (!Tree.HasChildren(row) || IsOwnLogic(Tree, row))
        {
            return null;
        }

        var reading = readings.Of(row);
        return reading.IsMixed
            ? $"{Tree.Name(row)} is split by {SplitLogic.Names.Format(reading.Logic)}"
                + $" ({Examples(Children(row), reading)}), but "
                + string.Join(
                    ", ",
                    reading.Strangers.Select(one =>
                        $"{Tree.Name(Children(row).ElementAt(one.Part))} speaks of "
                        + $"{SplitLogic.Names.Format(one.Logic)} (\"{one.Told}\")"
                    )
                )
                + "."
            : null;
    }

    /// <summary>A logic with a name of the project's own cannot be read.</summary>
    internal static bool IsOwnLogic(ElementTree tree, int row) =>
        tree.Elements.Texts(ElementTable.Split)[row] is { } split
        && !SplitLogic.Names.TryParse(split, out _);

    private string Examples(IEnumerable<int> children, SplitReading reading) =>
        string.Join(
            ", ",
            reading
                .Evidence.Where(one => one.Logic == reading.Logic)
                .Take(2)
                .Select(one => $"{Tree.Name(children.ElementAt(one.Part))}: \"{one.Told}\"")
        );
}

/// <summary>The names of the children speak of another logic than the declared one.</summary>
public sealed class SplitDiffersRule(ElementTree tree, SplitReadings readings) : ElementRule(tree)
{
    private const double FewOfThem = 1.0 / 3;

    public override string Name => "split_differs_from_names";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "The logic of a split is declared so that everybody looks for work in the same way. Here the names of the parts "
        + "speak of another one.";

    public override string Remedy => "Correct the declared logic, or the parts.";

    public override string Source =>
        "one declared logic for each split: after IEC 81346 and ISO 19008 (facets); the reading is a definition of our own";

    protected override string? Message(int row)
    {
        if (
            !Tree.HasChildren(row)
            || Tree.Elements.Texts(ElementTable.Split)[row] is not { } text
            || !SplitLogic.Names.TryParse(text, out var declared)
        )
        {
            return null;
        }

        var reading = readings.Of(row);
        var differs =
            reading is { IsMixed: false, Logic: not SplitLogic.Unknown }
            && !SplitLogic.MayStandAmong(declared, reading.Logic)
            && !SplitLogic.MayStandAmong(reading.Logic, declared)
            && reading.Supports[declared] < FewOfThem;
        if (!differs)
        {
            return null;
        }

        var told = reading
            .Evidence.Where(one => one.Logic == reading.Logic)
            .Take(3)
            .Select(one => $"{Tree.Name(Children(row).ElementAt(one.Part))}: \"{one.Told}\"");
        return $"{Tree.Name(row)} is declared to be split by {text}; its parts read like a split by "
            + $"{SplitLogic.Names.Format(reading.Logic)} ({string.Join(", ", told)}).";
    }
}

/// <summary>Nobody has said by which logic an element is split.</summary>
public sealed class SplitNotDeclaredRule(ElementTree tree) : ElementRule(tree)
{
    public override string Name => "split_not_declared";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Each split declares the one logic that it follows, so that the next part is added in the same way.";

    public override string Remedy =>
        "Declare it: phase, part, function, place, discipline, organisation, contract, or a word of your own.";

    public override string Source =>
        "after IEC 81346 and ISO 19008 (one facet for each division); common practice";

    protected override string? Message(int row) =>
        Tree.HasChildren(row) && Tree.Elements.Texts(ElementTable.Split)[row] is null
            ? $"Nobody has said by which logic {Tree.Name(row)} is split."
            : null;
}
