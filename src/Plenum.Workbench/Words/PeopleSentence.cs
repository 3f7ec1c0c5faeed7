using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>The main reading of the organisation as one or two plain sentences.</summary>
public static class PeopleSentence
{
    public static string Of(PeopleAnswer answer)
    {
        if (answer.Accounts == 0)
        {
            return "No control account has been placed yet.";
        }

        var managers = answer.Managers().Count();
        var sentence =
            $"{Counted(answer.Accounts, "control account stands", "control accounts stand")} where the plant meets "
            + $"{Counted(answer.Columns.Count(column => column.Accounts > 0), "unit", "units")}, and {Counted(managers, "manager answers", "managers answer")} for them.";
        return string.Join(' ', [sentence, .. Wanting(answer)]);
    }

    /// <summary>What is not in order, a sentence each.</summary>
    public static IEnumerable<string> Wanting(PeopleAnswer answer)
    {
        if (answer.PackagesWithoutAccount > 0)
        {
            yield return $"{Counted(answer.PackagesWithoutAccount, "package is", "packages are")} in no account.";
        }

        if (answer.WithoutManager > 0)
        {
            yield return $"{Counted(answer.WithoutManager, "account has", "accounts have")} no manager yet.";
        }

        if (answer.Overlaps > 0)
        {
            yield return $"{Counted(answer.Overlaps, "account lies", "accounts lie")} within or upon another one.";
        }
    }

    /// <summary>A count with its noun: "1 package", "12 packages".</summary>
    public static string Counted(int number, string one, string many) =>
        $"{Amounts.Count(number)} {(number == 1 ? one : many)}";
}
