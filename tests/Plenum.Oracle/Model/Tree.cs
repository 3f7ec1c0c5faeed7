using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>A row of the tree answer: money in minor units, hours in hundredths, null where there is nothing to say.</summary>
public sealed record TreeRow(
    string Code,
    string Name,
    int Level,
    string Kind,
    string Split,
    BigInteger Budget,
    BigInteger? Allotted,
    BigInteger? Gap,
    BigInteger Hours,
    int Packages
);

/// <summary>The elements depth first, with the sums over the packages below and the gaps.</summary>
public static class Tree
{
    public static IReadOnlyList<TreeRow> Rows(Facts facts) =>
        [
            .. facts.Elements.Select(element =>
            {
                var packages = PackagesWithin(facts, element);
                return new TreeRow(
                    element.Code,
                    element.Name,
                    element.Level,
                    element.Kind,
                    element.Split,
                    Budget(facts, element),
                    element.Allotted,
                    Gap(facts, element),
                    packages.Aggregate(BigInteger.Zero, (sum, package) => sum + package.Hours),
                    packages.Count
                );
            }),
        ];

    private static List<Package> PackagesWithin(Facts facts, Element top) =>
        [.. facts.Packages.Where(package => facts.LiesWithin(package.Code, top.Code))];

    private static BigInteger Budget(Facts facts, Element top) =>
        PackagesWithin(facts, top)
            .Aggregate(BigInteger.Zero, (sum, package) => sum + package.TotalBudget);

    /// <summary>
    /// Allotted less the children's allotted, or their budget where they have none; the whole for a childless
    /// element that is no package; nothing to compare without allotted, or for a package.
    /// </summary>
    private static BigInteger? Gap(Facts facts, Element element)
    {
        if (element.Allotted is not { } gap || element.IsPackage)
        {
            return null;
        }

        foreach (var child in facts.Elements.Where(child => child.Parent == element.Code))
        {
            gap -= child.Allotted ?? Budget(facts, child);
        }

        return gap;
    }
}
