using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>How a package is paid for: its cost elements with their shares in per cent.</summary>
internal static class CostMix
{
    private static readonly Dictionary<string, (string CostElement, int Share)[]> _mixes = new(
        StringComparer.Ordinal
    )
    {
        ["office"] = [("labour", 88), ("other", 12)],
        ["shop"] = [("material", 24), ("equipment", 76)],
        ["witness"] = [("subcontract", 100)],
        ["freight"] = [("subcontract", 100)],
        ["crew"] = [("labour", 56), ("material", 26), ("equipment", 18)],
        ["contract"] = [("material", 27), ("subcontract", 73)],
        ["start"] = [("labour", 84), ("other", 16)],
    };

    public static (string CostElement, int Share)[] Of(Package package) =>
        _mixes[package.Step.Payment];

    /// <summary>Work that is bought as a whole, so that an order stands behind each of its cost elements.</summary>
    public static bool IsOrdered(Package package) =>
        package.Step.Payment is "shop" or "witness" or "freight" or "contract";

    /// <summary>Labour cost of an hour in minor units.</summary>
    public static int HourlyRate(Package package) =>
        package.Step.Payment switch
        {
            "office" => 94_00,
            "crew" => 58_00,
            _ => 76_00,
        };
}

/// <summary>
/// Divides each account's budget among its packages, so that the account's budget, and where one is given its planned
/// value at the status date, come out as the plant's tables say.
/// </summary>
internal static class Budgets
{
    /// <summary>How far early work may gain or lose weight against late work to reach the planned value.</summary>
    private const double LeastShift = 0.3;
    private const double MostShift = 3.5;

    /// <summary>An account of which more is planned than this share counts as planned to be done.</summary>
    private const double MostPlanned = 0.95;

    private static readonly ForeignCurrency _dollar = new("USD", 0.92m, HasMinorUnits: true);
    private static readonly ForeignCurrency _krona = new("SEK", 0.0885m, HasMinorUnits: true);
    private static readonly ForeignCurrency _yen = new("JPY", 0.00615m, HasMinorUnits: false);

    public static void Make(DemoPlan plan, ulong seed)
    {
        var weights = plan.Holders.ToDictionary(
            account => account,
            account => Weigh(account, new SeededRandom(seed, "budget " + account.Code))
        );
        foreach (var account in weights.Keys.Where(account => account.Planned is not null))
        {
            Give(account, weights[account]);
        }
        var open = weights.Keys.Where(account => account.Planned is null).ToList();
        SetPlanned(
            open,
            weights,
            DemoProject.PlannedValue - weights.Keys.Except(open).Sum(PlannedValue)
        );
        foreach (var account in open)
        {
            Give(account, weights[account]);
        }
        foreach (var package in plan.Packages)
        {
            AddLines(package, new SeededRandom(seed, "cost elements " + package.Code));
        }
    }

    /// <summary>Planned value of an account at the status date, minor units.</summary>
    public static double PlannedValue(Account account) =>
        account.Packages.Sum(package =>
            package.Budget * Techniques.PlannedShare(package, DemoTime.StatusWorkDay)
        );

    private static void Give(Account account, double[] weights)
    {
        Shift(account, weights, (double)account.Planned!.Value / account.Budget);
        Divide(account, weights);
    }

    /// <summary>
    /// Accounts without a planned value in the plant's tables keep that of their dates, all moved by one factor so
    /// that together they come to <paramref name="wanted"/>. Those planned to be done are left alone.
    /// </summary>
    private static void SetPlanned(
        List<Account> accounts,
        Dictionary<Account, double[]> weights,
        double wanted
    )
    {
        var natural = accounts.ToDictionary(account => account, Natural);
        var done = accounts
            .Where(account => natural[account] > account.Budget * MostPlanned)
            .ToList();
        var fixedSum = done.Sum(account => natural[account]);
        var factor = (wanted - fixedSum) / (natural.Values.Sum() - fixedSum);
        foreach (var account in accounts)
        {
            account.Planned = (long)(natural[account] * (done.Contains(account) ? 1 : factor));
        }

        double Natural(Account account) =>
            account.Budget
            * account
                .Packages.Zip(weights[account])
                .Sum(pair =>
                    pair.Second * Techniques.PlannedShare(pair.First, DemoTime.StatusWorkDay)
                )
            / weights[account].Sum();
    }

    private static double[] Weigh(Account account, SeededRandom random) =>
        account
            .Packages.Select(package =>
                package.Component.Weight
                * package.Step.Share
                * random.Between(0.8, 1.2)
                / (
                    package.Lots
                    * package.Component.Packages.Sum(other => (double)other.Step.Share / other.Lots)
                )
            )
            .ToArray();

    /// <summary>
    /// Multiplies the weights of work that is more than half planned by the one factor that brings the planned share
    /// of the whole to the given value.
    /// </summary>
    private static void Shift(Account account, double[] weights, double wanted)
    {
        double early = 0;
        double earlyPlanned = 0;
        double late = 0;
        double latePlanned = 0;
        var shares = account.Packages.ConvertAll(p =>
            Techniques.PlannedShare(p, DemoTime.StatusWorkDay)
        );
        for (var i = 0; i < weights.Length; i++)
        {
            if (shares[i] > 0.5)
            {
                early += weights[i];
                earlyPlanned += weights[i] * shares[i];
            }
            else
            {
                late += weights[i];
                latePlanned += weights[i] * shares[i];
            }
        }
        var divisor = earlyPlanned - (wanted * early);
        if (divisor <= 0)
        {
            return;
        }
        var factor = Math.Clamp(((wanted * late) - latePlanned) / divisor, LeastShift, MostShift);
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] *= shares[i] > 0.5 ? factor : 1;
        }
    }

    /// <summary>Whole tens of the currency, by the rounded running total, so that nothing is lost.</summary>
    private static void Divide(Account account, double[] weights)
    {
        const long Ten = 10_00;
        var all = weights.Sum();
        double running = 0;
        long given = 0;
        for (var i = 0; i < weights.Length; i++)
        {
            running += weights[i];
            var total =
                i == weights.Length - 1 ? account.Budget : (long)(account.Budget * (running / all));
            var rounded = i == weights.Length - 1 ? total : total / Ten * Ten;
            account.Packages[i].Budget = rounded - given;
            given = rounded;
        }
    }

    private static void AddLines(Package package, SeededRandom random)
    {
        var mix = CostMix.Of(package);
        var currency = package.Step.Payment == "shop" ? CurrencyOf(random.Below(100)) : null;
        long given = 0;
        var share = 0;
        foreach (var (element, part) in mix)
        {
            share += part;
            var amount =
                share == 100 ? package.Budget - given : (package.Budget * part / 100 / 100 * 100);
            given += amount;
            long? hours = null;
            if (element == "labour")
            {
                hours = amount * 100 / CostMix.HourlyRate(package);
            }
            package.Lines.Add(
                element == "equipment" && currency is not null
                    ? Abroad(element, amount, currency)
                    : new BudgetLine(element, amount, amount, hours, null)
            );
        }
        package.Budget = package.Lines.Sum(line => line.Converted);
    }

    private static BudgetLine Abroad(string element, long amount, ForeignCurrency currency)
    {
        // Quoted in whole units of the currency.
        var (quoted, _) = currency.FromProject(amount);
        var whole = quoted / 100 * 100;
        var converted = Math.Round(whole * currency.Rate, MidpointRounding.AwayFromZero);
        return new BudgetLine(element, whole, (long)converted, null, currency);
    }

    private static ForeignCurrency? CurrencyOf(int kind) =>
        kind switch
        {
            < 9 => _dollar,
            < 14 => _krona,
            < 17 => _yen,
            _ => null,
        };
}
