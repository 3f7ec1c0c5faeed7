using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Web.People;

/// <summary>Who could manage an account that is missing, and what to ask.</summary>
/// <param name="Name">Name of the person.</param>
/// <param name="Sentence">What to ask, to be copied.</param>
public sealed record AskedPerson(string Name, string Sentence)
{
    /// <summary>
    /// The manager of the unit with the fewest open packages; null if nobody manages accounts of it or nothing waits.
    /// </summary>
    public static AskedPerson? For(PeopleAnswer answer, MatrixRow row, int column, Amounts figures)
    {
        var unit = answer.Columns[column];
        var person = answer
            .Managers(unit.Code)
            .Reverse()
            .OrderBy(one => one.Open)
            .FirstOrDefault();
        if (person is null || row.WaitingAt(column) is not { } waiting)
        {
            return null;
        }

        var similar = answer
            .Rows.SelectMany(one => one.At(column).Select(crossing => (one, crossing)))
            .Where(pair => pair.crossing.Manager == person.Code)
            .OrderBy(pair => Math.Abs(pair.crossing.Budget - waiting.Budget))
            .Select(pair => $"{pair.one.Code} {pair.one.Name}")
            .FirstOrDefault();
        var first = person.Name.Split(' ')[0];
        var starts = waiting.Start is { } day ? $", the first starts {Amounts.Day(day)}" : "";
        var runs = similar is null ? "" : $" You run {similar}";
        var load = PeopleSentence.Counted(person.Open, "open package", "open packages");
        return new AskedPerson(
            person.Name,
            $"{first}, will you answer for {row.Code} {row.Name}, {unit.Name}? "
                + $"{PeopleSentence.Counted(waiting.Packages, "package", "packages")}, {figures.Exact(waiting.Budget)}{starts}."
                + (runs.Length == 0 ? $" You have {load}." : $"{runs} and have {load}.")
        );
    }
}
