using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests;

/// <summary>The demo project is valid, whole, and comes to the figures that it was made for (constructed by us).</summary>
public sealed class DemoProjectTests
{
    private const decimal Million = 1_000_000m;

    [Fact]
    public void Every_table_has_content()
    {
        Assert.Equal(38, ProjectFiles.TableNames.Count);
        Assert.All(ProjectFiles.TableNames, table => Assert.NotEmpty(Demo.Files.Rows(table)));
    }

    [Theory]
    [InlineData(DemoProject.DefaultSeed)]
    [InlineData(1)]
    [InlineData(ulong.MaxValue)]
    public void The_demo_keeps_every_rule_of_its_tables_whatever_the_seed(ulong seed) =>
        Assert.Empty(Check.AllRules(Demo.Read(seed)));

    [Fact]
    public void The_plant_has_eleven_systems_58_subsystems_254_components_and_2708_packages()
    {
        var files = Demo.Files;
        var levels = files
            .Elements.Keys.CountBy(code => files.Upwards(code).Count())
            .OrderBy(pair => pair.Key);
        Assert.Equal([1, 11, 58, 254, 2708], levels.Select(pair => pair.Value));
        Assert.Equal(3032, files.Elements.Count);
        Assert.Equal(2708, files.Packages.Count);
    }

    [Fact]
    public void Ninety_seven_control_accounts_stand_where_a_subsystem_meets_a_unit()
    {
        var accounts = Demo.Files.Rows("accounts");
        Assert.Equal(97, accounts.Count);
        Assert.All(
            accounts,
            row => Assert.Equal($"{row["element"]}-{row["unit"]}", row["account"])
        );
        var byUnit = accounts.CountBy(row => row["unit"], StringComparer.Ordinal).ToDictionary();
        Assert.Equal(
            [4, 21, 24, 6, 16, 17, 4, 5],
            ((string[])["PRO", "MEC", "PIP", "ELE", "INS", "CIV", "MAR", "SIT"]).Select(unit =>
                byUnit[unit]
            )
        );
    }

    [Fact]
    public void Twenty_periods_reach_to_the_end_of_the_plan_and_eighteen_have_status_and_cost()
    {
        var files = Demo.Files;
        Assert.Equal(20, files.Periods.Count);
        Assert.Equal(new DateOnly(2027, 8, 31), files.StatusDate);
        Assert.Equal(
            "P18",
            files.Periods.Single(period => files.PeriodEnds[period] == files.StatusDate)
        );
        Assert.Equal(
            files.Periods.Take(18),
            files.Rows("status").Select(row => row["period"]).Distinct().Order()
        );
        Assert.Equal(
            files.Periods.Take(18),
            files.Rows("actuals").Select(row => row["period"]).Distinct().Order()
        );
        Assert.True(
            files.Packages.Values.Max(row => row.Date("finish")) <= files.PeriodEnds["P20"]
        );
    }

    [Fact]
    public void The_project_has_earned_less_than_planned_and_spent_more_than_earned()
    {
        var files = Demo.Files;
        var measures = new Measures(files);
        var planned = files.Packages.Keys.Sum(measures.Planned) / Million;
        var earned = files.Packages.Keys.Sum(measures.Earned) / Million;
        var actual = measures.Actual.Values.Sum() / Million;
        Assert.Equal(298.9m, planned, 1);
        Assert.InRange(earned, 283.4m, 284.4m);
        Assert.InRange(actual, 295.8m, 296.8m);
        Assert.InRange(earned / actual, 0.955m, 0.961m);
        Assert.InRange(earned / planned, 0.947m, 0.953m);
    }

    [Fact]
    public void Packages_undistributed_budget_and_allowances_come_to_the_budget_of_485_1_million()
    {
        var files = Demo.Files;
        var rest = files
            .Rows("postings")
            .Sum(row =>
                Sign(row["to"]) * row.Decimal("amount")
                - (Sign(row["from"]) * row.Decimal("amount"))
            );
        Assert.Equal(485.1m * Million, files.Budgets.Values.Sum() + rest);

        static int Sign(string place) => place is "undistributed" or "allowances" ? 1 : 0;
    }

    [Theory]
    [InlineData("10.1-CIV", "14.9", "11.8", "10.9", "-0.06")]
    [InlineData("08.3-ELE", "11.2", "7.0", "6.9", "-0.05")]
    [InlineData("02.4-MEC", "11.4", "6.6", "6.2", "0.02")]
    [InlineData("03.2-MEC", "8.9", "4.9", "4.2", "-0.02")]
    [InlineData("01.3-CIV", "5.8", "4.5", "4.4", "-1.26")]
    [InlineData("07.2-MAR", "14.0", "10.0", "9.4", "-1.02")]
    [InlineData("10.2-CIV", "8.4", "7.3", "7.4", "0.57")]
    public void Accounts_come_to_the_figures_that_the_plant_s_tables_give(
        string account,
        string budget,
        string planned,
        string earned,
        string variance
    )
    {
        var files = Demo.Files;
        var measures = new Measures(files);
        var packages = files.Packages.Keys.Where(code => files.AccountOf[code] == account).ToList();
        Near(budget, packages.Sum(code => files.Budgets[code]), 0.06m);
        Near(planned, packages.Sum(measures.Planned), 0.15m);
        Near(earned, packages.Sum(measures.Earned), 0.15m);
        Near(
            variance,
            packages.Sum(measures.CostVariance) - measures.Actual.GetValueOrDefault(account),
            0.03m
        );

        static void Near(string wanted, decimal found, decimal within) =>
            Assert.InRange((found / Million) - decimal.Parse(wanted, null), -within, within);
    }

    [Fact]
    public void All_techniques_spreads_and_link_types_are_used()
    {
        var files = Demo.Files;
        var techniques = files.Packages.Values.Select(row => row["technique"]).Distinct().ToList();
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
            techniques.ToHashSet()
        );
        Assert.Equal(5, files.Packages.Values.Select(row => row["spread"]).Distinct().Count());
        Assert.Equal(4, files.Rows("links").Select(row => row["type"]).Distinct().Count());
        Assert.Contains(files.Rows("links"), row => row.DecimalOrZero("lag") > 0);
    }

    /// <summary>Added by the revision that is not yet signed.</summary>
    private static bool InDraft(string item) =>
        Demo.Files.Rows("scope").Single(row => row["item"] == item)["revision"]
            is { Length: > 0 } revision
        && !Demo
            .Files.Rows("scope_revisions")
            .Single(row => row["revision"] == revision)
            .Has("signed")
        && !Demo.Files.Rows("scope_wordings").Any(row => row["item"] == item);

    [Fact]
    public void Traced_phrases_stand_in_the_text_of_their_scope_item()
    {
        var texts = Demo.Files.Rows("scope").ToDictionary(row => row["item"], row => row["text"]);
        Assert.Equal(
            96,
            Demo.Files.Rows("scope").Count(row => !row.Has("withdrawn") && !InDraft(row["item"]))
        );
        Assert.All(
            Demo.Files.Rows("trace")
                .Where(row => row.Has("phrase"))
                .Concat(Demo.Files.Rows("scope_phrases")),
            row =>
                Assert.Contains(
                    row["phrase"],
                    texts[row["item"]],
                    StringComparison.OrdinalIgnoreCase
                )
        );
    }

    [Fact]
    public void Packages_follow_their_work_set_and_what_is_not_planned_is_ruled_out_but_for_the_planted_gaps()
    {
        var files = Demo.Files;
        var sets = files
            .Rows("work_sets")
            .ToLookup(row => row["part_type"], row => row["activity"]);
        var ruledOut = files
            .Rows("not_needed")
            .Select(row => (row["element"], row["activity"]))
            .ToHashSet();
        var missing = new List<string>();
        foreach (var part in files.Elements.Values.Where(row => row.Has("part_type")))
        {
            var planned = files.Children[part["code"]].Select(row => row["activity"]).ToHashSet();
            Assert.Superset(planned, sets[part["part_type"]].Append("").ToHashSet());
            foreach (var activity in sets[part["part_type"]])
            {
                Assert.False(
                    planned.Contains(activity) && ruledOut.Contains((part["code"], activity))
                );
                if (!planned.Contains(activity) && !ruledOut.Contains((part["code"], activity)))
                {
                    missing.Add(part["code"]);
                }
            }
        }
        Assert.Equal(
            DemoProject
                .PlantedFaults.Where(fault => fault.Kind == "missing activity")
                .Select(fault => fault.Code)
                .Order(),
            missing.Order()
        );
    }
}
