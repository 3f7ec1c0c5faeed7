namespace Plenum.Workbench.Questions;

/// <summary>Where an arrow key leads in the plant-by-organisation matrix: from one account to the next.</summary>
public static class MatrixSteps
{
    /// <param name="answer">The matrix.</param>
    /// <param name="row">Number of the row that has the keys.</param>
    /// <param name="account">Code of the account that has them.</param>
    /// <param name="key">The key's name.</param>
    /// <param name="column">The column that up and down keep to where a row has no account in it.</param>
    /// <returns>Row and account; null if there is nothing in that direction, or the key does not move.</returns>
    public static (int Row, string Account)? Next(
        PeopleAnswer answer,
        int row,
        string account,
        string key,
        int column
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
                "ArrowUp" => Nearest(answer, row - 1, -1, column),
                "ArrowDown" => Nearest(answer, row + 1, 1, column),
                "Home" => (row, here[0].Account),
                "End" => (row, here[^1].Account),
                _ => null,
            };
    }

    /// <summary>In the next row that has accounts the one nearest to the column.</summary>
    private static (int, string)? Nearest(PeopleAnswer answer, int from, int by, int column)
    {
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
