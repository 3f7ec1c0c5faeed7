using System.Globalization;

namespace Plenum.Samples.Synthetic;

/// <summary>The people of a synthetic project: as many in each unit, about one for every six accounts.</summary>
internal sealed class SyntheticPeople
{
    private const int AccountsPerPerson = 6;

    public SyntheticPeople(SyntheticTree tree) =>
        PerUnit = (tree.Accounts / (AccountsPerPerson * WorkingUnits)) + 1;

    public static int WorkingUnits => SyntheticWords.Units.Length - SyntheticWords.FirstWorkingUnit;

    public int PerUnit { get; }

    public int Count => PerUnit * WorkingUnits;

    /// <summary>The unit that does an account's work; the accounts of a subsystem have different ones.</summary>
    public static string UnitOf(int account) =>
        SyntheticWords.Units[SyntheticWords.FirstWorkingUnit + UnitNumber(account)].Code;

    public string ManagerOf(int account)
    {
        var among = account / WorkingUnits % PerUnit;
        return Code((among * WorkingUnits) + UnitNumber(account));
    }

    /// <summary>The person's unit follows from the number.</summary>
    public static string UnitOfPerson(int person) =>
        SyntheticWords.Units[SyntheticWords.FirstWorkingUnit + (person % WorkingUnits)].Code;

    public static string Code(int person) =>
        string.Create(CultureInfo.InvariantCulture, $"p{person + 1:0000}");

    public static string NameOf(int person)
    {
        var first = SyntheticWords.FirstNames[person % SyntheticWords.FirstNames.Length];
        var last = SyntheticWords.LastNames[
            person / SyntheticWords.FirstNames.Length % SyntheticWords.LastNames.Length
        ];
        return $"{first} {last}";
    }

    private static int UnitNumber(int account) => account % WorkingUnits;
}
