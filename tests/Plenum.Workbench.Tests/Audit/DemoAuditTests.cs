using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Samples;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>The audit of the demo project: what was planted is found, and little else.</summary>
public class DemoAuditTests
{
    /// <summary>Which rule finds a kind of planted fault.</summary>
    private static readonly Dictionary<string, string> RuleOfKind = new(StringComparer.Ordinal)
    {
        ["gap"] = "gap",
        ["more than the whole"] = "more_than_the_whole",
        ["missing part"] = "sisters_differ",
        ["missing activity"] = "missing_activity",
        ["hidden offsets"] = "hidden_offsets",
        ["no person in charge"] = "package_without_person",
        ["no account"] = "package_without_account",
        ["stale status"] = "status_old",
        ["stale estimate"] = "estimate_old",
        ["estimate below the index"] = "package_estimate_low",
        ["spent beyond the order"] = "actual_above_committed",
        ["technique unsuited"] = "technique_unsuited",
        ["two logics in one split"] = "two_logics",
        ["generic name"] = "generic_name",
        ["named as work"] = "named_as_activity",
        ["duplicate name"] = "duplicate_name",
        ["deliverable not covered"] = "deliverable_not_covered",
        ["deliverable partly covered"] = "deliverable_partly_covered",
        ["exclusion answered"] = "exclusion_answered",
        ["nobody asked"] = "nobody_asked",
        ["late chain"] = "late_chain",
    };

    /// <summary>
    /// What is found and was not planted: how often, and why. Nothing here is wrong in the sense that the finding were
    /// untrue; most of it follows from what the generator does to make a project that is late and over its budget.
    /// </summary>
    private static readonly (string Rule, int Count, string Why)[] NotPlanted =
    [
        (
            "account_too_coarse",
            1,
            "cameras and doors, software of half a year by 0/100, leaves its account open"
        ),
        ("dictionary_incomplete", 1, "the dune strip, planted as a gap, has no dictionary either"),
        (
            "estimate_below_index",
            21,
            "managers who report nothing are taken to need the rest of the budget, while their accounts overrun"
        ),
        (
            "interface_late",
            7,
            "the register has interfaces that are promised late, as registers do"
        ),
        ("late_chain", 4, "other late work before the RO hall and the trains"),
        (
            "long_activity",
            56,
            "making equipment takes its suppliers more than two months, a note and no alarm"
        ),
        ("management_missing", 1, "the demo has no element for managing the project"),
        ("open_finish", 1, "the last inspection of a supplier lets nothing wait, as on every job"),
        (
            "package_too_long",
            16,
            "work of half a year and longer that is measured by a judged per cent"
        ),
        (
            "planning_package_due",
            5,
            "packages of the simulator, the slab and the fence that nobody has detailed in time"
        ),
        ("redundant_link", 6, "the test run waits for some of the work twice over"),
        ("required_date_missed", 1, "the site was levelled late, before anything else"),
        (
            "start_to_finish_link",
            1,
            "the test run is prepared until the manuals are begun, the one link of its type"
        ),
        (
            "status_old",
            4,
            "deliveries, a test and a hand-over whose predecessors are done and that never reported"
        ),
    ];

    private static readonly Lazy<IReadOnlyList<Finding>> Findings = new(() =>
        new CheckQuestion().Ask(DemoFiles.Project).Findings
    );

    public static TheoryData<string, string> Planted
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var fault in DemoProject.PlantedFaults)
            {
                data.Add(fault.Kind, fault.Code);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Planted))]
    public void A_planted_fault_is_found(string kind, string code) =>
        Assert.Contains(
            Findings.Value,
            finding => finding.Rule == RuleOfKind[kind] && Stands(finding.Code, code)
        );

    [Fact]
    public void What_was_not_planted_is_explained_and_is_at_most_one_finding_in_fifty_elements()
    {
        var planted = DemoProject
            .PlantedFaults.Select(fault => (Rule: RuleOfKind[fault.Kind], fault.Code))
            .ToList();
        var others = Findings
            .Value.Where(finding =>
                !FollowsFromTheLateFloor(finding)
                && !planted.Exists(fault =>
                    fault.Rule == finding.Rule && Stands(finding.Code, fault.Code)
                )
            )
            .GroupBy(finding => finding.Rule, StringComparer.Ordinal)
            .Select(group => (group.Key, group.Count()))
            .Order();
        Assert.Equal(NotPlanted.Select(other => (other.Rule, other.Count)), others);
        // a note says what is worth knowing; a false alarm is one that asks for something
        var notes = ProjectAudit
            .Rules(DemoFiles.Project)
            .Where(rule => rule.Severity == Severity.Note)
            .Select(rule => rule.Name)
            .ToHashSet(StringComparer.Ordinal);
        Assert.InRange(
            NotPlanted.Where(other => !notes.Contains(other.Rule)).Sum(other => other.Count),
            0,
            DemoFiles.Project.Tree.Count / 50
        );
    }

    [Fact]
    public void The_planted_late_floor_is_out_of_sequence_and_carries_the_dates_of_the_contract_with_it() =>
        Assert.Equal(
            [
                ("out_of_sequence", "10.1.03.6-A"),
                ("required_date_missed", "03.1.04.11-M"),
                ("required_date_missed", "09.4.02.3-M"),
                ("required_date_missed", "09.4.02.5-M"),
                ("required_date_missed", "10.1.03.6-M"),
            ],
            Findings
                .Value.Where(FollowsFromTheLateFloor)
                .Select(finding => (finding.Rule, finding.Code))
                .Order()
        );

    /// <summary>It is about the floor itself, or the floor is on the driving chain to where it stands.</summary>
    private static bool FollowsFromTheLateFloor(Finding finding)
    {
        var floor = DemoProject.PlantedFaults.Single(fault => fault.Kind == "late chain").Code;
        var network = DemoFiles.Project.Network;
        return finding.Rule is "out_of_sequence" or "required_date_missed"
            && network
                .Dates.Drivers.ChainTo(network.ActivityOf(finding.Code))
                .Any(station =>
                    network.Code(station.Activity).StartsWith(floor + "-", StringComparison.Ordinal)
                );
    }

    /// <summary>On the code itself, on a package below it, or on the one of two sisters that comes second.</summary>
    private static bool Stands(string found, string planted) =>
        found == planted || found.StartsWith(planted + ".", StringComparison.Ordinal);
}
