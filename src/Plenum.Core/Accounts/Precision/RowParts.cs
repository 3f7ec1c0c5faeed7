using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Core.Accounts.Precision;

/// <summary>
/// The parts that the error of each row of a flat cut may have: its packages, those that follow another (apportioned
/// effort) together with their base. Made once and asked for any row at any period's end.
/// </summary>
internal sealed class RowParts
{
    private readonly OpenShares shares;
    private readonly RowGroups partsOfRow;
    private readonly List<int> root = [];
    private readonly List<double> budget = [];

    public RowParts(TimePhased source, OpenShares shares, Cut cut)
    {
        this.shares = shares;
        HashSet<int> bases = [.. source.Baseline.Base.Where(package => package >= 0)];
        Dictionary<(int Row, int Root), int> together = [];
        List<int> row = [];
        for (var package = 0; package < cut.RowOfPackage.Length; package++)
        {
            var own = cut.RowOfPackage[package];
            var decides = own < 0 ? -1 : shares.RootOf(package);
            var amount = source.Baseline.TotalBudget[package];
            if (decides < 0 || amount == 0)
            {
                continue;
            }

            var isAlone = decides == package && !bases.Contains(package);
            if (!isAlone && together.TryGetValue((own, decides), out var part))
            {
                budget[part] += amount;
                continue;
            }

            if (!isAlone)
            {
                together.Add((own, decides), row.Count);
            }

            row.Add(own);
            root.Add(decides);
            budget.Add(amount);
        }

        partsOfRow = RowGroups.By([.. row], cut.Rows.Count);
    }

    /// <summary>The error of a row at a period's end.</summary>
    public RowError At(int row, int period)
    {
        List<(int Package, StatusError Error)>? open = null;
        foreach (var part in partsOfRow[row])
        {
            var share = shares.At(root[part], period);
            if (share.Worst != 0 && budget[part] != 0)
            {
                (open ??= []).Add(
                    (
                        root[part],
                        new StatusError(
                            share.Bias * budget[part],
                            share.Spread * budget[part],
                            share.Worst * budget[part]
                        )
                    )
                );
            }
        }

        return open is null ? RowError.Nothing : RowError.Of(open);
    }
}
