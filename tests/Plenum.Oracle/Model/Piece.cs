using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>
/// The atom of every cut: one cost element of a package, or of what is charged to an account itself. The lists hold
/// running totals in minor units: number 0 before the first period's end, number i at the end of period i.
/// </summary>
public sealed record Piece(
    string Owner,
    bool IsAccountCharge,
    string Element,
    Account? Account,
    string CostElement,
    BigInteger Budget,
    IReadOnlyList<BigInteger> Planned,
    IReadOnlyList<BigInteger> Earned,
    IReadOnlyList<BigInteger> Actual,
    IReadOnlyList<BigInteger> Committed,
    IReadOnlyList<BigInteger> Remaining
)
{
    /// <summary>All pieces of a project: five of every package, then five of every account.</summary>
    public static IReadOnlyList<Piece> All(Facts facts)
    {
        var pieces = new List<Piece>();
        foreach (var package in facts.Packages)
        {
            var account = AccountOf.Package(facts, package);
            var remaining = new List<IReadOnlyDictionary<string, BigInteger>>
            {
                Oracle.Model.Remaining.AtTheBeginning(package),
            };
            remaining.AddRange(
                facts.Periods.Select(period =>
                    Oracle.Model.Remaining.Of(facts, package, period.End)
                )
            );
            foreach (var costElement in CostElements.All)
            {
                pieces.Add(
                    new Piece(
                        package.Code,
                        IsAccountCharge: false,
                        package.Code,
                        account,
                        costElement,
                        package.Budget[costElement],
                        Series(
                            facts,
                            date => PlannedShare.Value(facts, package, costElement, date)
                        ),
                        Series(facts, date => EarnedShare.Value(facts, package, costElement, date)),
                        Series(
                            facts,
                            date => ActualCost.Of(facts, package.Code, costElement, date)
                        ),
                        Series(
                            facts,
                            date => ActualCost.Committed(facts, package, costElement, date)
                        ),
                        [.. remaining.Select(parts => parts[costElement])]
                    )
                );
            }
        }

        foreach (var account in facts.Accounts)
        {
            foreach (var costElement in CostElements.All)
            {
                var nothing = Series(facts, _ => BigInteger.Zero);
                pieces.Add(
                    new Piece(
                        account.Code,
                        IsAccountCharge: true,
                        account.Element,
                        account,
                        costElement,
                        BigInteger.Zero,
                        nothing,
                        nothing,
                        Series(
                            facts,
                            date => ActualCost.Of(facts, account.Code, costElement, date)
                        ),
                        nothing,
                        nothing
                    )
                );
            }
        }

        return pieces;
    }

    private static List<BigInteger> Series(Facts facts, Func<DateOnly, BigInteger> valueAt) =>
        [BigInteger.Zero, .. facts.Periods.Select(period => valueAt(period.End))];
}
