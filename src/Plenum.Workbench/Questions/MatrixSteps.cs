namespace Plenum.Workbench.Questions;

/// <summary>A place in the matrix: a crossing, and which account there.</summary>
/// <param name="Row">Number of the row.</param>
/// <param name="Column">Number of the unit's column.</param>
/// <param name="Account">Code of the account; empty at a crossing without one.</param>
public sealed record MatrixPlace(int Row, int Column, string Account);

/// <summary>Where an arrow key leads in the plant-by-organisation matrix: from one crossing to the next, empty ones too.</summary>
public static class MatrixSteps
{
    /// <param name="answer">The matrix.</param>
    /// <param name="from">The place that has the keys.</param>
    /// <param name="key">The key's name.</param>
    /// <returns>The next place; null if there is nothing in that direction, or the key does not move.</returns>
    public static MatrixPlace? Next(PeopleAnswer answer, MatrixPlace from, string key)
    {
        if (
            from.Row < 0
            || from.Row >= answer.Rows.Count
            || from.Column < 0
            || from.Column >= answer.Columns.Count
        )
        {
            return null;
        }

        var places = Places(answer, from.Row);
        var at = places.FindIndex(place =>
            place.Column == from.Column && place.Account == from.Account
        );
        at = at < 0 ? places.FindIndex(place => place.Column == from.Column) : at;
        return key switch
        {
            "ArrowLeft" => at > 0 ? places[at - 1] : null,
            "ArrowRight" => at >= 0 && at + 1 < places.Count ? places[at + 1] : null,
            "ArrowUp" => InRow(answer, from.Row - 1, -1, from.Column),
            "ArrowDown" => InRow(answer, from.Row + 1, 1, from.Column),
            "Home" => places[0],
            "End" => places[^1],
            _ => null,
        };
    }

    /// <summary>The first place of a crossing.</summary>
    public static MatrixPlace First(PeopleAnswer answer, int row, int column) =>
        Places(answer, row).First(place => place.Column == column);

    private static List<MatrixPlace> Places(PeopleAnswer answer, int row)
    {
        List<MatrixPlace> places = [];
        for (var column = 0; column < answer.Columns.Count; column++)
        {
            var before = places.Count;
            places.AddRange(
                answer
                    .Rows[row]
                    .At(column)
                    .Select(crossing => new MatrixPlace(row, column, crossing.Account))
            );
            if (places.Count == before)
            {
                places.Add(new MatrixPlace(row, column, ""));
            }
        }

        return places;
    }

    private static MatrixPlace? InRow(PeopleAnswer answer, int from, int by, int column)
    {
        for (var row = from; row >= 0 && row < answer.Rows.Count; row += by)
        {
            if (!answer.Rows[row].IsGroup)
            {
                return First(answer, row, column);
            }
        }

        return null;
    }
}
