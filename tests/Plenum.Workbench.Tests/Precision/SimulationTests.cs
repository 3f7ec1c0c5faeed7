using Plenum.Core.Accounts.Precision;

namespace Plenum.Workbench.Tests.Precision;

/// <summary>
/// The computed precision against simulation: the true progress of every open package of the demo is drawn 10 000 times
/// from what its technique leaves open. Draws are stratified, one in each ten-thousandth, in an order of their own for
/// each package; the seed is fixed.
/// </summary>
public class SimulationTests
{
    private const int Draws = 10_000;
    private const int Seed = 20_260_331;

    private const double StatedLevel = 0.05;

    /// <summary>The present month and those before it.</summary>
    private const int Months = 8;

    private static readonly Lazy<List<Simulated>>[] ByMonth =
    [
        .. Enumerable
            .Range(0, Months)
            .Select(back => new Lazy<List<Simulated>>(() =>
                Simulate(DemoFiles.Project.CurrentPeriod() - back)
            )),
    ];

    /// <summary>Accounts at the status date.</summary>
    private static Lazy<List<Simulated>> Accounts => ByMonth[0];

    [Fact]
    public void There_is_enough_to_simulate_and_every_technique_takes_part()
    {
        Assert.InRange(Accounts.Value.Count, 50, 97);
        var open = OpenInterval.OfDemo(DemoFiles.Text).Keys.ToHashSet(StringComparer.Ordinal);
        Assert.Equal(
            ["items", "milestones", "percent", "start and finish", "units"],
            DemoFiles
                .Text.Rows("packages")
                .Where(row => open.Contains(row["package"]))
                .Select(row =>
                    row["technique"].Contains('/') ? "start and finish" : row["technique"]
                )
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void The_worst_case_is_never_exceeded()
    {
        var most = 0.0;
        foreach (var account in ByMonth.SelectMany(month => month.Value))
        {
            var share = account.Errors.Max(Math.Abs) / account.Computed.Error.Worst;
            most = Math.Max(most, share);
            Assert.True(
                account.Errors.Max(Math.Abs) <= account.Computed.Error.Worst * (1 + 1e-9) + 1,
                account.Code
            );
        }

        Tell($"most of the worst case that was reached: {most:0.0000}");
    }

    [Fact]
    public void Bias_and_spread_are_within_two_per_cent_of_what_is_computed() =>
        AssertAndTell(
            "of the spread",
            Accounts.Value,
            account =>
            {
                var mean = account.Errors.Average();
                var spread = Math.Sqrt(
                    account.Errors.Average(error => (error - mean) * (error - mean))
                );
                var computed = account.Computed.Error;
                // a bias of nothing can be told to the spread only
                Assert.True(
                    Math.Abs(mean - computed.Bias)
                        <= 0.02 * Math.Max(Math.Abs(computed.Bias), computed.Spread),
                    $"{account.Code}: bias {mean}, computed {computed.Bias}"
                );
                Assert.Equal(1, spread / computed.Spread, 0.02);
                return Math.Max(
                    Math.Abs((spread / computed.Spread) - 1),
                    Math.Abs(mean - computed.Bias)
                        / Math.Max(Math.Abs(computed.Bias), computed.Spread)
                );
            }
        );

    [Fact]
    public void In_months_without_real_variance_false_alarms_stay_beside_the_stated_level()
    {
        var (alarms, drawn) = (0, 0);
        for (var back = 0; back < Months; back++)
        {
            var ofMonth = 0;
            foreach (var account in ByMonth[back].Value)
            {
                // no real variance: what was spent is what the true progress is worth, so that CV is the error itself
                var own = account.Errors.Count(error =>
                    VarianceCertainty.Of((long)Math.Round(error), account.Computed).IsToldFromZero
                );
                ofMonth += own;
            }

            var accounts = ByMonth[back].Value.Count;
            Assert.InRange(accounts, 20, 97);
            var share = (double)ofMonth / (Draws * accounts);
            Tell(
                $"{back} months back, {accounts} accounts: {share:0.0000} false alarms, stated {StatedLevel}"
            );
            Assert.Equal(StatedLevel, share, 0.0075);
            alarms += ofMonth;
            drawn += Draws * accounts;
        }

        Tell($"all months: {(double)alarms / drawn:0.0000} of {drawn}");
        Assert.Equal(StatedLevel, (double)alarms / drawn, 0.005);
    }

    [Fact]
    public void A_real_variance_of_twice_the_half_width_is_nearly_always_told() =>
        Assert.All(
            Accounts.Value,
            account =>
            {
                var real = -2 * account.Computed.HalfWidth;
                var told = account.Errors.Count(error =>
                    VarianceCertainty
                        .Of((long)Math.Round(error + real), account.Computed)
                        .IsToldFromZero
                );
                Assert.InRange((double)told / Draws, 0.95, 1);
            }
        );

    private static void AssertAndTell(
        string what,
        List<Simulated> accounts,
        Func<Simulated, double> assert
    )
    {
        var most = accounts.Max(assert);
        Tell($"{accounts.Count} accounts, farthest from what is computed: {most:0.0000} {what}");
    }

    private static void Tell(FormattableString figures) =>
        TestContext.Current.TestOutputHelper!.WriteLine(FormattableString.Invariant(figures));

    private static List<Simulated> Simulate(int period)
    {
        var project = DemoFiles.Project;
        var open = OpenInterval.OfDemo(DemoFiles.Text, project.Periods.Codes[period]);
        var cut = project.CutsUnder(-1).ByAccount();
        var (rows, _) = RowErrors.At(project.TimePhased, project.OpenShares, cut, period);
        var errors = new double[rows.Length][];
        var codes = cut.Rows.Select(row => row.Code).ToList();
        var random = new Random(Seed);
        for (var package = 0; package < project.Baseline.Count; package++)
        {
            if (!open.TryGetValue(project.Baseline.Code(package), out var interval))
            {
                continue;
            }

            var (accounts, budgets) = BudgetsWithFollowers(project, package);
            int[] rowsOf = [.. accounts.Select(account => codes.IndexOf(account))];
            var strata = Enumerable.Range(0, Draws).ToArray();
            random.Shuffle(strata);
            for (var draw = 0; draw < Draws; draw++)
            {
                var at = (strata[draw] + random.NextDouble()) / Draws;
                var error = interval.Earned - interval.Low - (at * (interval.High - interval.Low));
                foreach (var (row, budget) in rowsOf.Zip(budgets))
                {
                    (errors[row] ??= new double[Draws])[draw] += error * budget;
                }
            }
        }

        return
        [
            .. rows.Select((row, i) => new Simulated(cut.Rows[i].Code, row, errors[i]))
                .Where(account => account.Errors is not null && account.Computed.Error.Worst > 0),
        ];
    }

    /// <summary>The package's account and budget, and those of what follows it.</summary>
    private static (List<string> Accounts, List<double> Budgets) BudgetsWithFollowers(
        Core.Project project,
        int package
    )
    {
        List<string> accounts = [];
        List<double> budgets = [];
        for (var other = 0; other < project.Baseline.Count; other++)
        {
            if (other == package || project.OpenShares.RootOf(other) == package)
            {
                var account = project.Placement.AccountOfPackage[other];
                accounts.Add(
                    account < 0 ? "*no_account" : project.Placement.Accounts.Codes[account]!
                );
                budgets.Add(project.Baseline.TotalBudget[other]);
            }
        }

        return (accounts, budgets);
    }

    private sealed record Simulated(string Code, RowError Computed, double[] Errors);
}
