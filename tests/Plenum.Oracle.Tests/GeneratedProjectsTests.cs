using System.Globalization;
using System.Numerics;
using Plenum.Oracle.Generator;
using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Tests;

/// <summary>Generated projects are valid by the rules of the files, and they use what they are meant to use.</summary>
public sealed class GeneratedProjectsTests
{
    private static readonly TextProject[] Projects =
    [
        .. Enumerable.Range(0, 500).Select(seed => ProjectGenerator.Project(seed)),
    ];

    private static readonly string[] ActualDates = ["started", "finished", "done"];

    private static readonly Dictionary<string, string[]> Keys = new(StringComparer.Ordinal)
    {
        ["project"] = ["key"],
        ["calendars"] = ["calendar"],
        ["calendar_days"] = ["calendar", "date"],
        ["periods"] = ["period"],
        ["units"] = ["unit"],
        ["people"] = ["person"],
        ["elements"] = ["code"],
        ["accounts"] = ["account"],
        ["groups"] = ["grouping", "group"],
        ["group_members"] = ["grouping", "package"],
        ["packages"] = ["package"],
        ["budget"] = ["package", "cost_element"],
        ["budget_periods"] = ["package", "period", "cost_element"],
        ["milestones"] = ["package", "milestone"],
        ["items"] = ["package", "item"],
        ["credit_steps"] = ["rule", "step"],
        ["status"] = ["package", "period"],
        ["milestone_status"] = ["package", "milestone", "period"],
        ["item_steps"] = ["item", "package", "step", "period"],
        ["actuals"] = ["document", "line"],
        ["commitments"] = ["order", "line"],
        ["changes"] = ["change"],
        ["postings"] = ["change", "posting"],
    };

    [Fact]
    public void Same_seed_gives_the_same_project()
    {
        var first = ProjectGenerator.Project(7);
        var second = ProjectGenerator.Project(7);
        Assert.Equal(first.TableNames, second.TableNames);
        Assert.All(
            first.TableNames,
            table =>
                Assert.Equal(CsvFolder.Text(first.Rows(table)), CsvFolder.Text(second.Rows(table)))
        );
    }

    [Fact]
    public void Keys_are_given_once() =>
        ForEach(
            (project, _) =>
                Assert.All(
                    project.TableNames,
                    table =>
                        Assert.Distinct(
                            project
                                .Rows(table)
                                .Select(row =>
                                    string.Join('|', Keys[table].Select(column => row[column]))
                                ),
                            StringComparer.Ordinal
                        )
                )
        );

    [Fact]
    public void Projects_are_small() =>
        ForEach(
            (project, facts) =>
            {
                Assert.InRange(project.Rows("elements").Count, 5, 60);
                Assert.InRange(facts.Packages.Count, 1, 40);
                Assert.InRange(facts.Accounts.Count, 0, 10);
                Assert.InRange(facts.Periods.Count, 1, 12);
                Assert.Equal(project.Rows("elements").Count, facts.Elements.Count);
            }
        );

    [Fact]
    public void Codes_of_packages_and_accounts_differ() =>
        ForEach(
            (_, facts) =>
                Assert.Empty(
                    facts
                        .Accounts.Select(account => account.Code)
                        .Intersect(facts.Packages.Select(p => p.Code), StringComparer.Ordinal)
                )
        );

    [Fact]
    public void Packages_are_leaves() =>
        ForEach(
            (_, facts) =>
                Assert.All(
                    facts.Elements,
                    element =>
                        Assert.False(
                            element.Parent.Length > 0 && facts.Element(element.Parent).IsPackage
                        )
                )
        );

    [Fact]
    public void Named_account_lies_on_the_package_or_an_ancestor() =>
        ForEach(
            (_, facts) =>
                Assert.All(
                    facts.Packages.Where(package => package.NamedAccount.Length > 0),
                    package =>
                        Assert.True(
                            facts.LiesWithin(
                                package.Code,
                                facts
                                    .Accounts.Single(account =>
                                        account.Code == package.NamedAccount
                                    )
                                    .Element
                            )
                        )
                )
        );

    [Fact]
    public void Baseline_finish_is_not_before_the_start_nor_before_the_project() =>
        ForEach(
            (_, facts) =>
                Assert.All(
                    facts.Packages,
                    package =>
                    {
                        Assert.False(package.Finish < package.Start);
                        Assert.False(package.Start < facts.Start);
                    }
                )
        );

    [Fact]
    public void Amounts_per_period_touch_the_package_and_add_up_to_its_budget() =>
        ForEach(
            (_, facts) =>
            {
                foreach (
                    var package in facts.Packages.Where(package => package.Spread == "periods")
                )
                {
                    var rows = facts
                        .PeriodAmounts.Where(row => row.Package == package.Code)
                        .ToList();
                    Assert.All(
                        rows,
                        row =>
                            Assert.True(
                                row.Period.End >= package.Start
                                    && !(row.Period.Begin > package.Finish)
                            )
                    );
                    Assert.Equal(package.TotalBudget, Sum(rows.Select(row => row.Amount)));
                    if (rows.Exists(row => row.CostElement.Length > 0))
                    {
                        Assert.All(
                            CostElements.All,
                            costElement =>
                                Assert.Equal(
                                    package.Budget[costElement],
                                    Sum(
                                        rows.Where(row => row.CostElement == costElement)
                                            .Select(row => row.Amount)
                                    )
                                )
                        );
                    }
                }
            }
        );

    [Fact]
    public void Milestones_have_weight_and_are_planned_within_the_package() =>
        ForEach(
            (_, facts) =>
            {
                foreach (
                    var package in facts.Packages.Where(package =>
                        package.Technique == Technique.Milestones
                    )
                )
                {
                    var milestones = facts
                        .Milestones.Where(milestone => milestone.Package == package.Code)
                        .ToList();
                    Assert.Contains(milestones, milestone => milestone.Weight > Ratio.Zero);
                    Assert.All(
                        milestones.Where(milestone => milestone.Planned is not null),
                        milestone =>
                            Assert.True(
                                milestone.Planned >= package.Start
                                    && milestone.Planned <= package.Finish
                            )
                    );
                }
            }
        );

    [Fact]
    public void Steps_of_a_rule_add_to_one_hundred_percent() =>
        ForEach(
            (_, facts) =>
                Assert.All(
                    facts.CreditSteps.GroupBy(step => step.Rule, StringComparer.Ordinal),
                    steps =>
                        Assert.Equal(
                            Ratio.Of(100),
                            steps.Aggregate(Ratio.Zero, (sum, step) => sum + step.Percent)
                        )
                )
        );

    [Fact]
    public void Apportioned_package_follows_another_one_with_budget_and_never_itself() =>
        ForEach(
            (_, facts) =>
            {
                foreach (
                    var package in facts.Packages.Where(package =>
                        package.Technique == Technique.Apportioned
                    )
                )
                {
                    var next = package;
                    for (var steps = 0; next.Technique == Technique.Apportioned; steps++)
                    {
                        next = facts.Package(next.Base);
                        Assert.True(next.TotalBudget > 0);
                        Assert.True(steps < facts.Packages.Count);
                    }
                }
            }
        );

    [Fact]
    public void Actual_dates_are_not_after_the_end_of_their_period() =>
        ForEach(
            (_, facts) =>
            {
                foreach (var field in ActualDates)
                {
                    Assert.All(
                        facts
                            .Status.Concat(facts.MilestoneStatus)
                            .Where(report => IsDate(report.Fields[field])),
                        report => Assert.True(Iso(report.Fields[field]) <= report.Period.End)
                    );
                }
            }
        );

    [Fact]
    public void Finish_is_held_only_with_a_start_on_or_before_it() =>
        ForEach(
            (_, facts) =>
            {
                foreach (var package in facts.Packages)
                {
                    foreach (var date in facts.Periods.Select(period => period.End))
                    {
                        var finished = Held.Date(Held.Of(facts, package), "finished", date);
                        var started = Held.Date(Held.Of(facts, package), "started", date);
                        Assert.True(finished is null || started <= finished);
                    }
                }
            }
        );

    [Fact]
    public void Percents_lie_between_0_and_100_with_two_decimals_at_most() =>
        ForEach(
            (_, facts) =>
                Assert.All(
                    facts
                        .Status.Select(report => report.Fields["percent"])
                        .Where(text => text is not "" and not "-"),
                    text =>
                    {
                        var percent = Ratio.Parse(text);
                        Assert.True(percent >= Ratio.Zero && percent <= Ratio.Of(100));
                        Assert.Equal(percent, percent.Rounded(2));
                    }
                )
        );

    [Fact]
    public void Units_always_have_a_quantity_once_they_are_reported() =>
        ForEach(
            (_, facts) =>
            {
                foreach (
                    var package in facts.Packages.Where(package =>
                        package.Technique == Technique.Units
                    )
                )
                {
                    foreach (var date in facts.Periods.Select(period => period.End))
                    {
                        var reports = Held.Of(facts, package).ToList();
                        var quantity =
                            Held.Number(reports, "quantity", date)
                            ?? facts.Element(package.Code).Quantity;
                        Assert.True(
                            Held.Field(reports, "units_done", date) is null
                                || Ratio.Quotient(Ratio.One, quantity) is not null
                        );
                    }
                }
            }
        );

    [Fact]
    public void Postings_leave_each_account_with_the_budget_of_its_packages() =>
        ForEach(
            (project, facts) =>
            {
                if (project.Rows("postings").Count == 0)
                {
                    return;
                }

                foreach (var account in facts.Accounts)
                {
                    var packages = facts.Packages.Where(p =>
                        AccountOf.Package(facts, p)?.Code == account.Code
                    );
                    var posted = project
                        .Rows("postings")
                        .Where(row => row["to"] == account.Code)
                        .Select(row =>
                            Currency.MinorUnits(row["amount"], project.Setting("currency"))
                        );
                    Assert.Equal(Sum(packages.Select(package => package.TotalBudget)), Sum(posted));
                }
            }
        );

    /// <summary>How many of the 500 projects use each thing that measures depend on; a rare one would hardly be checked.</summary>
    [Fact]
    public void Everything_that_measures_depend_on_occurs_often()
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        ForEach(
            (project, facts) =>
            {
                foreach (
                    var feature in Features.Of(project, facts).Distinct(StringComparer.Ordinal)
                )
                {
                    counts[feature] = counts.GetValueOrDefault(feature) + 1;
                }
            }
        );
        Assert.All(
            Features.All,
            feature =>
                Assert.True(
                    counts.GetValueOrDefault(feature) >= 15,
                    $"{feature}: {counts.GetValueOrDefault(feature)}"
                )
        );
    }

    private static void ForEach(Action<TextProject, Facts> check)
    {
        for (var seed = 0; seed < Projects.Length; seed++)
        {
            try
            {
                check(Projects[seed], new FactReader(Projects[seed]).Read());
            }
            catch (Exception problem)
            {
                throw new InvalidOperationException(
                    $"Project of seed {seed}: {problem.Message}",
                    problem
                );
            }
        }
    }

    private static bool IsDate(string text) => text is not "" and not "-";

    private static DateOnly Iso(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static BigInteger Sum(IEnumerable<BigInteger> amounts) =>
        amounts.Aggregate(BigInteger.Zero, BigInteger.Add);
}
