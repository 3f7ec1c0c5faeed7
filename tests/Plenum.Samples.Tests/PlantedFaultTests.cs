using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests;

/// <summary>
/// Each kind of fault is searched for in the whole project, knowing nothing of where it was planted: what is found is
/// what the list says, no more and no less.
/// </summary>
public sealed class PlantedFaultTests
{
    private const decimal Million = 1_000_000m;

    private static readonly Dictionary<string, Func<ProjectFiles, IEnumerable<string>>> _searches =
        new(StringComparer.Ordinal)
        {
            ["gap"] = Gaps,
            ["more than the whole"] = files =>
                Differences(files).Where(pair => pair.Gap < 0).Select(pair => pair.Code),
            ["missing part"] = PartsThatSistersHave,
            ["missing activity"] = MissingActivities,
            ["hidden offsets"] = HiddenOffsets,
            ["no person in charge"] = PartsWithoutPerson,
            ["no account"] = files =>
                files
                    .AccountOf.Where(pair => pair.Value.Length == 0)
                    .Select(pair => Part(files, pair.Key))
                    .Distinct(),
            ["stale status"] = files =>
                OpenPackages(files).Where(code => PeriodsSince(files, code, "period") > 2),
            ["stale estimate"] = files =>
                OpenPackages(files).Where(code => PeriodsSince(files, code, "etc") > 2),
            ["estimate below the index"] = EstimatesBelowTheIndex,
            ["spent beyond the order"] = SpentBeyondTheOrder,
            ["technique unsuited"] = UnsuitedTechniques,
            ["two logics in one split"] = TwoLogics,
            ["generic name"] = files =>
                files
                    .Elements.Values.Where(row =>
                        row["name"].StartsWith("Other", StringComparison.Ordinal)
                        && !files.Packages.ContainsKey(row["code"])
                    )
                    .Select(row => row["code"]),
            ["named as work"] = files =>
                files
                    .Elements.Values.Where(row =>
                        row["name"].StartsWith("Programme ", StringComparison.Ordinal)
                        && !files.Packages.ContainsKey(row["code"])
                    )
                    .Select(row => row["code"]),
            ["duplicate name"] = files =>
                files
                    .Children.Where(sisters =>
                        sisters.DistinctBy(row => row["name"]).Count() < sisters.Count()
                    )
                    .Select(sisters => sisters.Key),
            ["deliverable not covered"] = files =>
                files
                    .Rows("scope")
                    .Where(row => row["kind"] == "deliverable" && !row.Has("withdrawn"))
                    .Select(row => row["item"])
                    .Except(files.Rows("trace").Select(row => row["item"]), StringComparer.Ordinal),
            ["deliverable partly covered"] = PartlyCovered,
            ["exclusion answered"] = files =>
                files
                    .Rows("scope")
                    .Where(row => row["kind"] == "exclusion")
                    .Select(row => row["item"])
                    .Intersect(
                        files.Rows("trace").Select(row => row["item"]),
                        StringComparer.Ordinal
                    ),
            ["nobody asked"] = NobodyAsked,
            ["late chain"] = LateFloors,
        };

    public static TheoryData<string> Kinds =>
        new(DemoProject.PlantedFaults.Select(fault => fault.Kind).Distinct());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Faults_of_a_kind_are_found_where_they_were_planted_and_nowhere_else(string kind)
    {
        var planted = DemoProject
            .PlantedFaults.Where(fault => fault.Kind == kind)
            .Select(fault => fault.Code);
        Assert.Equal(
            planted.Order(StringComparer.Ordinal),
            _searches[kind](Demo.Files).Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("stale status")]
    [InlineData("stale estimate")]
    [InlineData("estimate below the index")]
    [InlineData("spent beyond the order")]
    [InlineData("late chain")]
    [InlineData("gap")]
    [InlineData("more than the whole")]
    public void Faults_stand_at_the_same_codes_whatever_the_seed(string kind)
    {
        var planted = DemoProject
            .PlantedFaults.Where(fault => fault.Kind == kind)
            .Select(fault => fault.Code);
        Assert.Subset(_searches[kind](Demo.Read(77)).ToHashSet(), planted.ToHashSet());
    }

    [Fact]
    public void Every_planted_fault_says_in_words_what_is_wrong_and_names_an_element_account_or_scope_item()
    {
        var files = Demo.Files;
        var codes = files
            .Elements.Keys.Concat(files.Rows("accounts").Select(row => row["account"]))
            .Concat(files.Rows("scope").Select(row => row["item"]))
            .ToHashSet(StringComparer.Ordinal);
        Assert.All(DemoProject.PlantedFaults, fault => Assert.Contains(fault.Code, codes));
        Assert.All(
            DemoProject.PlantedFaults,
            fault => Assert.EndsWith(".", fault.Description, StringComparison.Ordinal)
        );
        Assert.Distinct(DemoProject.PlantedFaults.Select(fault => (fault.Kind, fault.Code)));
    }

    /// <summary>What is allotted less the sum of the children, or of their packages, where that is not zero.</summary>
    private static IEnumerable<(string Code, decimal Gap)> Differences(ProjectFiles files) =>
        files
            .Elements.Values.Where(row => row.Has("allotted") && files.Children[row["code"]].Any())
            .Select(row =>
            {
                var parts = files.Children[row["code"]];
                var sum = parts.Sum(child =>
                    child.Has("allotted")
                        ? child.Decimal("allotted")
                        : files.BudgetOf(child["code"])
                );
                return (row["code"], row.Decimal("allotted") - sum);
            })
            .Where(pair => pair.Item2 != 0);

    private static IEnumerable<string> Gaps(ProjectFiles files) =>
        Differences(files)
            .Where(pair => pair.Gap > 0)
            .Select(pair => pair.Code)
            .Concat(
                files
                    .Elements.Values.Where(row =>
                        row["kind"] == "branch" && !files.Children[row["code"]].Any()
                    )
                    .Select(row => row["code"])
            );

    /// <summary>A part type that all sisters of a subsystem of the same kind of name have, and it has not.</summary>
    private static IEnumerable<string> PartsThatSistersHave(ProjectFiles files)
    {
        var trains = files
            .Elements.Values.Where(row =>
                row["name"].StartsWith("RO train ", StringComparison.Ordinal)
            )
            .ToList();
        var parts = trains.ToDictionary(
            row => row["code"],
            row =>
                files
                    .Children[row["code"]]
                    .Select(part => part["name"])
                    .ToHashSet(StringComparer.Ordinal)
        );
        Assert.Equal(6, trains.Count);
        return parts
            .Where(pair => parts.Any(other => other.Value.Except(pair.Value).Any()))
            .Select(pair => pair.Key);
    }

    private static IEnumerable<string> MissingActivities(ProjectFiles files)
    {
        var sets = files
            .Rows("work_sets")
            .ToLookup(row => row["part_type"], row => row["activity"]);
        var ruledOut = files
            .Rows("not_needed")
            .ToLookup(row => row["element"], row => row["activity"]);
        foreach (var part in files.Elements.Values.Where(row => row.Has("part_type")))
        {
            var planned = files.Children[part["code"]].Select(child => child["activity"]);
            if (sets[part["part_type"]].Except(planned).Except(ruledOut[part["code"]]).Any())
            {
                yield return part["code"];
            }
        }
    }

    private static IEnumerable<string> HiddenOffsets(ProjectFiles files)
    {
        var measures = new Measures(files);
        return files
            .AccountOf.GroupBy(
                pair => pair.Value,
                pair => measures.CostVariance(pair.Key) / Million,
                StringComparer.Ordinal
            )
            .Where(group => Math.Abs(group.Sum()) < 0.1m && group.Where(cv => cv < 0).Sum() < -0.8m)
            .Select(group => group.Key);
    }

    private static IEnumerable<string> PartsWithoutPerson(ProjectFiles files) =>
        files
            .Packages.Keys.Where(code => !files.Upwards(code).Any(row => row.Has("person")))
            .Select(code => Part(files, code))
            .Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> OpenPackages(ProjectFiles files)
    {
        var measures = new Measures(files);
        return files.Packages.Keys.Where(measures.IsOpen);
    }

    /// <summary>How many periods lie between the last row that gives the field and the status date; 0 without one.</summary>
    private static int PeriodsSince(ProjectFiles files, string package, string field)
    {
        var rows = files
            .Rows("status")
            .Where(row => row["package"] == package && row.Has(field))
            .ToList();
        var status = files.Periods.FindIndex(period =>
            files.PeriodEnds[period] == files.StatusDate
        );
        return rows.Count == 0 ? 0 : status - rows.Max(row => files.Periods.IndexOf(row["period"]));
    }

    private static IEnumerable<string> EstimatesBelowTheIndex(ProjectFiles files)
    {
        var measures = new Measures(files);
        return OpenPackages(files)
            .Where(code =>
                measures.LastRow(code, "etc") is { } row
                && files.PeriodEnds[row["period"]] == files.StatusDate
                && row.Decimal("etc") < (files.Budgets[code] - measures.Earned(code)) * 0.5m
            );
    }

    private static IEnumerable<string> SpentBeyondTheOrder(ProjectFiles files)
    {
        var measures = new Measures(files);
        return files
            .Rows("commitments")
            .GroupBy(row => row["package"], StringComparer.Ordinal)
            .Where(order =>
                measures.Actual.GetValueOrDefault(order.Key)
                > order.Sum(row => row.Decimal("amount"))
            )
            .Select(order => order.Key);
    }

    /// <summary>All or nothing over more than one period, two steps over more than two (common practice).</summary>
    private static IEnumerable<string> UnsuitedTechniques(ProjectFiles files)
    {
        foreach (var row in files.Packages.Values.Where(row => row["technique"].Contains('/')))
        {
            var touched = files.Periods.Count(period =>
                files.PeriodEnds[period] >= row.Date("start")
                && files.PeriodStart(period) <= row.Date("finish")
            );
            if (touched > (row["technique"] == "0/100" ? 1 : 2))
            {
                yield return row["package"];
            }
        }
    }

    /// <summary>Split by place, and a part of it is a kind of thing that is counted in pieces, not along the way.</summary>
    private static IEnumerable<string> TwoLogics(ProjectFiles files) =>
        files
            .Elements.Values.Where(row =>
                row["split"] == "place"
                && files.Children[row["code"]].Any(child => child["part_type"] == "valves")
            )
            .Select(row => row["code"]);

    /// <summary>Items that are traced, and of which a phrase that has to be answered is not.</summary>
    private static IEnumerable<string> PartlyCovered(ProjectFiles files)
    {
        var traces = files.Rows("trace").ToLookup(row => row["item"], StringComparer.Ordinal);
        return files
            .Rows("scope_phrases")
            .Where(row =>
                traces[row["item"]].Any()
                && !traces[row["item"]].Any(trace => trace["phrase"] == row["phrase"])
            )
            .Select(row => row["item"]);
    }

    /// <summary>The topmost elements without a trace on themselves, above or below.</summary>
    private static IEnumerable<string> NobodyAsked(ProjectFiles files)
    {
        var traced = files
            .Rows("trace")
            .Select(row => row["element"])
            .ToHashSet(StringComparer.Ordinal);
        var unasked = files
            .Elements.Keys.Where(code =>
                !files.Upwards(code).Any(row => traced.Contains(row["code"]))
                && !files.Below(code).Any(row => traced.Contains(row["code"]))
            )
            .ToHashSet(StringComparer.Ordinal);
        return unasked.Where(code => !unasked.Contains(files.Elements[code]["parent"]));
    }

    /// <summary>Open work of the RO hall that still takes more than 30 working days beyond its baseline finish.</summary>
    private static IEnumerable<string> LateFloors(ProjectFiles files)
    {
        var measures = new Measures(files);
        foreach (
            var code in OpenPackages(files)
                .Where(code => code.StartsWith("10.1.", StringComparison.Ordinal))
        )
        {
            var left = files.WorkingDays(
                files.StatusDate.AddDays(1),
                files.Packages[code].Date("finish")
            );
            if ((measures.LastRow(code, "remaining")?.Decimal("remaining") ?? 0) - left > 30)
            {
                yield return code;
            }
        }
    }

    private static string Part(ProjectFiles files, string package) =>
        files.Elements[package]["parent"];
}
