using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests;

public sealed class SyntheticProjectTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 9)]
    [InlineData(7, 3)]
    [InlineData(11, 4)]
    [InlineData(99, 5)]
    [InlineData(100, 6)]
    [InlineData(250, 7)]
    [InlineData(1000, 0)]
    [InlineData(3107, ulong.MaxValue)]
    [InlineData(8000, 11)]
    public void A_synthetic_project_of_any_size_keeps_every_rule(int packages, ulong seed)
    {
        var files = Read(packages, seed);
        Assert.Equal(packages, files.Packages.Count);
        Assert.Empty(Check.AllRules(files));
        Assert.DoesNotContain("", files.AccountOf.Values);
    }

    [Fact]
    public void A_large_project_has_six_levels_accounts_of_about_a_hundred_packages_and_every_technique()
    {
        var files = Read(20_000, 3);
        Assert.Equal(6, files.Packages.Keys.Max(code => files.Upwards(code).Count()));
        Assert.All(
            files.AccountOf.GroupBy(pair => pair.Value),
            group => Assert.InRange(group.Count(), 90, 110)
        );
        var techniques = files.Packages.Values.Select(row => row["technique"]).ToHashSet();
        Assert.Superset(
            (HashSet<string>)
                [
                    "0/100",
                    "50/50",
                    "20/80",
                    "25/75",
                    "milestones",
                    "percent",
                    "units",
                    "items",
                    "loe",
                    "apportioned",
                ],
            techniques
        );
        Assert.InRange((double)files.Rows("links").Count / files.Packages.Count, 1.3, 1.7);
        Assert.InRange((double)files.Rows("actuals").Count / files.Packages.Count, 3.0, 3.8);
    }

    [Fact]
    public void About_two_thirds_of_the_time_have_passed_with_status_and_cost()
    {
        var files = Read(2000, 8);
        Assert.Equal(40, files.Periods.Count);
        Assert.Equal(
            25,
            files.Periods.FindIndex(period => files.PeriodEnds[period] == files.StatusDate)
        );
        var measures = new Measures(files);
        var earned = files.Packages.Keys.Sum(measures.Earned) / files.Budgets.Values.Sum();
        Assert.InRange(earned, 0.5m, 0.8m);
        Assert.InRange(
            earned * files.Budgets.Values.Sum() / measures.Actual.Values.Sum(),
            0.85m,
            1.1m
        );
    }

    [Fact]
    public void What_is_allotted_is_the_sum_of_the_packages_at_every_level()
    {
        var files = Read(900, 2);
        Assert.All(
            files.Elements.Values.Where(row => row.Has("allotted")),
            row => Assert.Equal(files.BudgetOf(row["code"]), row.Decimal("allotted"))
        );
    }

    [Fact]
    public void Sisters_have_different_names()
    {
        var files = Read(5000, 2);
        Assert.All(files.Children, sisters => Assert.Distinct(sisters.Select(row => row["name"])));
    }

    [Fact]
    public void Progress_grows_to_the_whole_and_a_stop_leaves_no_file()
    {
        using var folder = new TemporaryFolder();
        var shares = new List<double>();
        SyntheticProject.Write(
            folder.Path,
            5000,
            1,
            (_, share) => shares.Add(share),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(shares.Order(), shares);
        Assert.Equal(1, shares[^1]);

        using var empty = new TemporaryFolder();
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() =>
            SyntheticProject.Write(empty.Path, 5000, 1, (_, share) => StopAt(share), stop.Token)
        );
        Assert.Empty(Directory.GetFiles(empty.Path));

        void StopAt(double share)
        {
            if (share > 0.5)
            {
                stop.Cancel();
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1_000_001)]
    public void A_number_of_packages_out_of_range_is_refused(int packages)
    {
        using var folder = new TemporaryFolder();
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SyntheticProject.Write(
                folder.Path,
                packages,
                1,
                ct: TestContext.Current.CancellationToken
            )
        );
    }

    private static ProjectFiles Read(int packages, ulong seed)
    {
        using var folder = new TemporaryFolder();
        SyntheticProject.Write(
            folder.Path,
            packages,
            seed,
            ct: TestContext.Current.CancellationToken
        );
        return new ProjectFiles(folder.Path);
    }
}
