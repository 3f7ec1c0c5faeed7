using System.Globalization;

namespace Plenum.Samples.Synthetic;

/// <summary>
/// The shape of a synthetic breakdown, computed from the number of packages alone: areas, systems, subsystems with up
/// to three control accounts each, parts of up to ten packages. A level that would hold one element only is left out.
/// </summary>
internal sealed class SyntheticTree
{
    public const int PackagesPerPart = 10;
    public const int AccountsPerSubsystem = 3;
    private const int PackagesPerAccount = 100;
    private const int MostAccounts = 5_000;
    public const int SubsystemsPerSystem = 8;
    private const int SystemsPerArea = 8;

    public SyntheticTree(int packages)
    {
        Packages = packages;
        Accounts = Math.Clamp(packages / PackagesPerAccount, 1, MostAccounts);
        Subsystems = DivideUp(Accounts, AccountsPerSubsystem);
        Systems = DivideUp(Subsystems, SubsystemsPerSystem);
        Areas = DivideUp(Systems, SystemsPerArea);
    }

    public int Packages { get; }
    public int Accounts { get; }
    public int Subsystems { get; }
    public int Systems { get; }
    public int Areas { get; }

    public bool HasAreas => Areas > 1;
    public bool HasSystems => Systems > 1;

    /// <summary>The number of an account's first package; of the account after the last: how many there are.</summary>
    public int FirstPackage(int account) => (int)((long)Packages * account / Accounts);

    public int PackagesOf(int account) => FirstPackage(account + 1) - FirstPackage(account);

    public int PartsOf(int account) => DivideUp(PackagesOf(account), PackagesPerPart);

    public static int SubsystemOf(int account) => account / AccountsPerSubsystem;

    public static int SystemOf(int subsystem) => subsystem / SubsystemsPerSystem;

    public static int AreaOf(int system) => system / SystemsPerArea;

    /// <summary>How many parts the accounts before this one have in the same subsystem.</summary>
    public int PartsBefore(int account)
    {
        var parts = 0;
        for (var other = account - (account % AccountsPerSubsystem); other < account; other++)
        {
            parts += PartsOf(other);
        }
        return parts;
    }

    public static string AreaCode(int area) => Number(area + 1);

    public string SystemCode(int system) =>
        HasAreas
            ? $"{AreaCode(AreaOf(system))}.{Number((system % SystemsPerArea) + 1)}"
            : Number(system + 1);

    public string SubsystemCode(int subsystem) =>
        HasSystems
            ? $"{SystemCode(SystemOf(subsystem))}.{Number((subsystem % SubsystemsPerSystem) + 1)}"
            : Number(subsystem + 1);

    public static string PartCode(string subsystem, int part) =>
        string.Create(CultureInfo.InvariantCulture, $"{subsystem}.{part + 1:00}");

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static int DivideUp(int value, int by) => (value + by - 1) / by;
}
