using Plenum.Workbench.Questions;

namespace Plenum.Web.People;

/// <summary>What is to be done at a crossing of the matrix.</summary>
public enum Deed
{
    /// <summary>Name a manager: of the account there, or of one that is placed there.</summary>
    Name,
    Merge,
    Divide,
    HandOver,
    Remove,
    Group,
}

/// <summary>A deed that was asked for at a crossing, and what stands there.</summary>
/// <param name="Deed">The deed.</param>
/// <param name="Place">The crossing.</param>
/// <param name="Row">Its part of the plant.</param>
/// <param name="Column">Its unit.</param>
/// <param name="Account">The account there; null for none.</param>
public sealed record CrossingDeed(
    Deed Deed,
    MatrixPlace Place,
    MatrixRow Row,
    UnitColumn Column,
    Crossing? Account
)
{
    /// <summary>The deed of a key; null for a key that does nothing there.</summary>
    public static CrossingDeed? Of(PeopleAnswer answer, MatrixPlace place, string key)
    {
        if (
            place.Row < 0
            || place.Row >= answer.Rows.Count
            || place.Column < 0
            || place.Column >= answer.Columns.Count
        )
        {
            return null;
        }

        var row = answer.Rows[place.Row];
        var account = row.At(place.Column)
            .FirstOrDefault(crossing => crossing.Account == place.Account);
        Deed? deed = key switch
        {
            "Enter" => Deed.Name,
            "m" when account is not null => Deed.Merge,
            "d" when account is not null => Deed.Divide,
            "h" when account is not null => Deed.HandOver,
            "g" when account is not null => Deed.Group,
            "Delete" when account is not null => Deed.Remove,
            _ => null,
        };
        return deed is { } known
            ? new CrossingDeed(known, place, row, answer.Columns[place.Column], account)
            : null;
    }
}
