using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Baseline;

/// <summary>
/// Balances of the budget ledger. Source of the accounts: SAE EIA-748 guidelines 14 and 15; allowances are counted
/// like undistributed budget.
/// </summary>
public static class BudgetLedger
{
    /// <summary>Undistributed budget and allowances, in minor units; 0 without postings.</summary>
    public static long Undistributed(Table postings)
    {
        var from = postings.Ints(PostingTable.From);
        var to = postings.Ints(PostingTable.To);
        var amounts = postings.Longs(PostingTable.Amount);
        var balance = 0L;
        for (var row = 0; row < amounts.Length; row++)
        {
            balance +=
                (IsUndistributed(to[row]) ? amounts[row] : 0)
                - (IsUndistributed(from[row]) ? amounts[row] : 0);
        }

        return balance;
    }

    /// <summary>What was posted to each control account, by its row, in minor units.</summary>
    public static long[] Distributed(Table postings, Table accounts)
    {
        var from = postings.Ints(PostingTable.From);
        var to = postings.Ints(PostingTable.To);
        var amounts = postings.Longs(PostingTable.Amount);
        var distributed = new long[accounts.Count];
        for (var row = 0; row < amounts.Length; row++)
        {
            Book(from[row], PostingTable.From, -amounts[row]);
            Book(to[row], PostingTable.To, amounts[row]);
        }

        return distributed;

        void Book(int fund, ColumnDefinition column, long amount)
        {
            if (column.DecodeReference(fund) is (>= 0, var id))
            {
                distributed[accounts.RowOf(id)] += amount;
            }
        }
    }

    private static bool IsUndistributed(int fund) =>
        fund == ColumnDefinition.EncodeWord(PostingTable.Undistributed)
        || fund == ColumnDefinition.EncodeWord(PostingTable.Allowances);
}
