using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Which elements of a standard breakdown are taken, and why others are not.</summary>
internal sealed class StandardChoice
{
    private readonly int[] parents;
    private readonly bool[] leftOut;
    private readonly SortedDictionary<int, string> reasons = [];

    /// <param name="elements">The elements, a parent before its children.</param>
    /// <param name="leave">What is left out.</param>
    /// <param name="faults">Receives what is wrong with it.</param>
    /// <param name="standard">What the standard breakdown is called.</param>
    public StandardChoice(
        StandardTable elements,
        IReadOnlyList<LeaveOut> leave,
        List<EditFault> faults,
        string standard
    )
    {
        Dictionary<string, int> rowOf = new(StringComparer.Ordinal);
        parents = new int[elements.Count];
        for (var row = 0; row < elements.Count; row++)
        {
            rowOf[elements.Cell(row, ElementTable.Code)!] = row;
            parents[row] = elements.Cell(row, ElementTable.Parent) is { } above ? rowOf[above] : -1;
        }

        foreach (var (code, reason) in leave)
        {
            if (!rowOf.TryGetValue(code, out var row))
            {
                var nearest = NearestWord.Of(code, rowOf.Keys);
                Fault(
                    code,
                    "a code of the standard breakdown",
                    $"the standard breakdown has no element {code}"
                        + (nearest is null ? "" : $"; did you mean {nearest}?")
                );
            }
            else if (row == 0)
            {
                Fault(code, "a part of it", "the whole cannot be left out: leave out parts of it");
            }
            else if (string.IsNullOrWhiteSpace(reason))
            {
                Fault(
                    code,
                    "a reason",
                    $"{code} is left out without a reason: say why it does not apply"
                );
            }
            else if (!reasons.TryAdd(row, reason.Trim()))
            {
                Fault(code, "each part once", $"{code} is left out twice: give one reason");
            }
        }

        leftOut = new bool[elements.Count];
        for (var row = 1; row < leftOut.Length; row++)
        {
            var within = leftOut[parents[row]];
            leftOut[row] = within || reasons.ContainsKey(row);
            if (within && reasons.ContainsKey(row))
            {
                Fault(
                    elements.Cell(row, ElementTable.Code)!,
                    "the greater part only",
                    $"{elements.Cell(row, ElementTable.Code)} lies within a part that is left out: give a reason for that one only"
                );
            }
        }

        if (Enumerable.Range(1, Math.Max(0, elements.Count - 1)).All(row => leftOut[row]))
        {
            Fault(
                "",
                "some parts that apply",
                "every part is left out, so there is nothing to take over"
            );
        }

        void Fault(string code, string expected, string message) =>
            faults.Add(
                new EditFault(
                    standard,
                    code.Length == 0 ? null : code,
                    ElementTable.Code.Name,
                    code,
                    expected,
                    message
                )
            );
    }

    /// <summary>The parts that are left out, greatest first, with the reasons.</summary>
    public IEnumerable<(int Row, string Reason)> Reasons =>
        reasons.Select(pair => (pair.Key, pair.Value));

    public bool IsLeftOut(int row) => leftOut[row];

    /// <summary>The row is directly below the root.</summary>
    public bool IsTop(int row) => parents[row] == 0;

    /// <summary>It has children in the standard, and all of them are left out.</summary>
    public bool HasLostItsChildren(int row)
    {
        var any = false;
        for (var child = row + 1; child < parents.Length && parents[child] >= row; child++)
        {
            if (parents[child] == row)
            {
                any = true;
                if (!leftOut[child])
                {
                    return false;
                }
            }
        }

        return any;
    }
}
