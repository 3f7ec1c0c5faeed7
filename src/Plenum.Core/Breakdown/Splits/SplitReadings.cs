using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Splits;

/// <summary>
/// The logic of every split of a breakdown, read when it is first asked for. Names speak, and so do part types that
/// differ between sisters, units that children are named after, and activities of a work set that children carry out.
/// Not to be asked by several threads at once.
/// </summary>
public sealed class SplitReadings
{
    private const int ClearHint = 2;
    private const int LoudHint = 3;

    private readonly ElementTree tree;
    private readonly Func<int, string?> unitName;
    private readonly Func<int, string> partTypeCode;
    private readonly SplitReader reader;
    private readonly SplitReading?[] readings;

    /// <param name="tree">The breakdown.</param>
    /// <param name="words">The word list.</param>
    /// <param name="unitName">The name of the organisation unit with an id.</param>
    /// <param name="partTypeCode">The code of the part type with an id.</param>
    public SplitReadings(
        ElementTree tree,
        SplitWords words,
        Func<int, string?> unitName,
        Func<int, string> partTypeCode
    )
    {
        this.tree = tree;
        this.unitName = unitName;
        this.partTypeCode = partTypeCode;
        reader = new SplitReader(words);
        readings = new SplitReading?[tree.Count];
    }

    /// <summary>The reading of an element's split; its parts are the element's children in order.</summary>
    public SplitReading Of(int row) => readings[row] ??= Read(row);

    private SplitReading Read(int row)
    {
        List<int> children = [];
        for (var child = row + 1; child < tree.SubtreeEnd[row]; child = tree.SubtreeEnd[child])
        {
            children.Add(child);
        }

        var common = CommonType(children);
        return reader.Read(
            [
                .. children.Select(child => new SplitPart(
                    tree.Name(child),
                    [.. Hints(child, common)]
                )),
            ],
            tree.Name(row)
        );
    }

    /// <summary>The part type that more than half of the children have: it tells nothing of what parts them.</summary>
    private int CommonType(List<int> children)
    {
        var types = tree.Elements.Ints(ElementTable.PartType);
        Dictionary<int, int> counts = [];
        foreach (var child in children)
        {
            counts[types[child]] = counts.GetValueOrDefault(types[child]) + 1;
        }

        return counts
            .Where(pair => 2 * pair.Value > children.Count)
            .Select(pair => pair.Key)
            .FirstOrDefault(Cell.NoInt);
    }

    private IEnumerable<SplitHint> Hints(int child, int commonType)
    {
        var elements = tree.Elements;
        if (elements.Texts(ElementTable.Activity)[child] is { } activity)
        {
            yield return new SplitHint(SplitLogic.Phase, LoudHint, "activity " + activity);
        }

        if (
            elements.Ints(ElementTable.PartType)[child] is var type
            && Cell.IsGiven(type)
            && type != commonType
        )
        {
            yield return new SplitHint(
                SplitLogic.Part,
                ClearHint,
                "part type " + partTypeCode(type)
            );
        }

        if (
            elements.Ints(ElementTable.Unit)[child] is var unit
            && Cell.IsGiven(unit)
            && string.Equals(unitName(unit), tree.Name(child), StringComparison.OrdinalIgnoreCase)
        )
        {
            yield return new SplitHint(
                SplitLogic.Organisation,
                ClearHint,
                "unit " + unitName(unit)
            );
        }
    }
}
