using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Scope;

/// <summary>What must hold for the scope statement and what is asked about it.</summary>
public static class ScopeRules
{
    /// <summary>An answer has its day on or after that of the query, and no query has the day without the answer.</summary>
    public static void CheckQueries(Table queries, IRowFaults faults)
    {
        var asked = queries.Ints(QueryTable.Asked);
        var answered = queries.Ints(QueryTable.Answered);
        var answers = queries.Texts(QueryTable.Answer);
        for (var row = 0; row < queries.Count; row++)
        {
            if (!Cell.IsGiven(answered[row]))
            {
                continue;
            }

            if (answers[row] is null)
            {
                faults.Add(
                    queries,
                    row,
                    QueryTable.Answered,
                    "no date as long as there is no answer",
                    $"{queries.Codes[row]} has the date of an answer, and no answer"
                );
            }

            if (Cell.IsGiven(asked[row]) && answered[row] < asked[row])
            {
                faults.Add(
                    queries,
                    row,
                    QueryTable.Answered,
                    "a date on or after that of the query",
                    $"{queries.Codes[row]} was asked on {Day(asked[row])} and answered before, on {Day(answered[row])}"
                );
            }
        }
    }

    private static string Day(int number) =>
        DateOnly
            .FromDayNumber(number)
            .ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
