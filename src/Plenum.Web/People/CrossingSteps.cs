using Plenum.Workbench.Questions;

namespace Plenum.Web.People;

/// <summary>Where an arrow key leads in the matrix: from one account to the next in that direction.</summary>
public static class CrossingSteps
{
    /// <param name="answer">The matrix.</param>
    /// <param name="row">Number of the row that has the keys.</param>
    /// <param name="account">Code of the account that has them.</param>
    /// <param name="key">The key's name.</param>
    /// <returns>Row and account; null if there is nothing in that direction, or the key does not move.</returns>
    public static (int Row, string Account)? Next(
        PeopleAnswer answer,
        int row,
        string account,
        string key
    )
    {
        if (row < 0 || row >= answer.Rows.Count)
        {
            return null;
        }

        var here = answer.Rows[row].Crossings;
        var at = Enumerable
            .Range(0, here.Count)
            .FirstOrDefault(i => here[i].Account == account, -1);
        return at < 0
            ? null
            : key switch
            {
                "ArrowLeft" => at > 0 ? (row, here[at - 1].Account) : null,
                "ArrowRight" => at + 1 < here.Count ? (row, here[at + 1].Account) : null,
                "ArrowUp" => InColumn(answer, here[at].Column, row - 1, -1),
                "ArrowDown" => InColumn(answer, here[at].Column, row + 1, 1),
                "Home" => (row, here[0].Account),
                "End" => (row, here[^1].Account),
                _ => null,
            };
    }

    /// <summary>
    /// The nearest row with an account of the same unit; where there is none, the next row with any, and in it the
    /// account that stands nearest to the column.
    /// </summary>
    private static (int, string)? InColumn(PeopleAnswer answer, int column, int from, int by)
    {
        for (var row = from; row >= 0 && row < answer.Rows.Count; row += by)
        {
            if (
                answer.Rows[row].Crossings.FirstOrDefault(crossing => crossing.Column == column) is
                { } same
            )
            {
                return (row, same.Account);
            }
        }

        for (var row = from; row >= 0 && row < answer.Rows.Count; row += by)
        {
            if (
                answer.Rows[row].Crossings.MinBy(crossing => Math.Abs(crossing.Column - column)) is
                { } nearest
            )
            {
                return (row, nearest.Account);
            }
        }

        return null;
    }
}
