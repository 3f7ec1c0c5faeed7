using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>One of several sisters of the same type lacks what the others have, or has other hours.</summary>
public sealed class SistersRule(
    ElementTree tree,
    Sisters sisters,
    long[] hours,
    Func<int, string, bool> isRuledOut,
    AuditThresholds thresholds
) : PlaceRule
{
    private const int Fewest = 3;

    // hours of the sisters of each group, in order
    private readonly Dictionary<SisterGroup, long[]> inOrder = new(
        ReferenceEqualityComparer.Instance
    );

    public override string Name => "sisters_differ";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Things of one type need the same parts and the same work. What nearly all sisters have and one lacks has mostly "
        + "been forgotten there; hours far from the others' are mostly a slip.";

    public override string Remedy =>
        "Add what is missing, or say why it is not needed; check the hours.";

    public override string Source => "common practice; definition of our own";

    public override int Places => tree.Count;

    public override IEnumerable<Finding> At(int place)
    {
        if (tree.Parent[place] < 0 || sisters.Of(place) is not { Rows.Count: >= Fewest } group)
        {
            yield break;
        }

        foreach (var (what, having) in group.Contents)
        {
            if (
                !having.Contains(place)
                && having.Count < group.Rows.Count
                && having.Count * (long)Fraction.Whole
                    >= thresholds.SistersShare.BasisPoints * (long)(group.Rows.Count - 1)
                && !isRuledOut(place, what)
            )
            {
                yield return Found(
                    tree.Code(place),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{tree.Name(place)} lacks \"{what}\", which {having.Count} of its {group.Rows.Count - 1} sisters of the same type have."
                    )
                );
            }
        }

        if (group.AreAlike && UsualHours(group, place) is var usual and > 0)
        {
            var own = hours[place];
            if (own > usual * thresholds.SistersHours || own * thresholds.SistersHours < usual)
            {
                yield return Found(
                    tree.Code(place),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{tree.Name(place)} has {own / 100m:0.##} h; its sisters of the same type usually have {usual / 100m:0.##} h."
                    )
                );
            }
        }
    }

    /// <summary>The median of the sisters' hours, in hundredths, the element's own left out.</summary>
    private long UsualHours(SisterGroup group, int place)
    {
        if (!inOrder.TryGetValue(group, out var sorted))
        {
            inOrder[group] = sorted = [.. group.Rows.Select(row => hours[row]).Order()];
        }

        var middle = (sorted.Length - 1) / 2;
        var own = Array.BinarySearch(sorted, hours[place]);
        return sorted[middle < own ? middle : middle + 1];
    }
}
