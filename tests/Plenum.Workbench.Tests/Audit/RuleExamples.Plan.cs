using static Plenum.Workbench.Tests.Audit.SoundProject;

namespace Plenum.Workbench.Tests.Audit;

internal static partial class RuleExamples
{
    private static IEnumerable<RuleExample> OfBaseline =>
        [
            new(
                "technique_unsuited",
                "PLT.2.1.2",
                text => Package(text, "PLT.2.1.2")["finish"] = "2026-05-01",
                text => Package(text, "PLT.2.1.2")["finish"] = "2026-04-30"
            ),
            new(
                "package_too_large",
                "PLT.3.1",
                text => Set(text, "audit_package_share", "24"),
                text => Set(text, "audit_package_share", "25")
            ),
            new(
                "package_too_small",
                "PLT.2.1.1",
                text => Row(text, "budget", "PLT.2.1.1")["hours"] = "7.99",
                text => Row(text, "budget", "PLT.2.1.1")["hours"] = "8"
            ),
            new(
                "package_without_budget",
                "PLT.3.3",
                text => AddElement(text, "PLT.3.3", "PLT.3", "Gutters"),
                // a planning package may wait for its budget
                text => AddElement(text, "PLT.3.3", "PLT.3", "Gutters", "planning_package")
            ),
            new(
                "package_without_dates",
                "PLT.3.2",
                text =>
                {
                    Row(text, "milestones", "PLT.3.2", "frame")["planned"] = "";
                    Row(text, "milestones", "PLT.3.2", "sheets")["planned"] = "";
                    Package(text, "PLT.3.2")["start"] = "";
                },
                // apportioned effort needs no dates
                text =>
                {
                    AddElement(text, "PLT.3.3", "PLT.3", "Checking of the foundations");
                    AddPackage(text, "PLT.3.3", "apportioned", "", "")["base"] = "PLT.3.1";
                }
            ),
            new(
                "level_of_effort_share",
                "PLT",
                text => Set(text, "audit_loe_share", "9.99"),
                text => Set(text, "audit_loe_share", "10")
            ),
            new(
                "ledger_differs_from_packages",
                "A3",
                text => Post(text, "44999"),
                text => Post(text, "45000")
            ),
        ];

    private static IEnumerable<RuleExample> OfStatus =>
        [
            new(
                "package_too_long",
                "PLT.3.2",
                text =>
                {
                    var roof = Package(text, "PLT.3.2");
                    roof["technique"] = "percent";
                    roof["finish"] = "2026-06-01";
                },
                text =>
                {
                    var roof = Package(text, "PLT.3.2");
                    roof["technique"] = "percent";
                    roof["finish"] = "2026-05-29";
                }
            ),
            new(
                "planning_package_due",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["kind"] = "planning_package",
                text =>
                {
                    Element(text, "PLT.3.2")["kind"] = "planning_package";
                    Row(text, "milestones", "PLT.3.2", "frame")["planned"] = "2026-05-15";
                    Package(text, "PLT.3.2")["start"] = "2026-05-04";
                }
            ),
            new(
                "status_old",
                "PLT.3.3",
                text => AddForgotten(text, linked: false),
                // waits for the deliveries
                text => AddForgotten(text, linked: true)
            ),
            new(
                "estimate_old",
                "PLT.2.1.2",
                text =>
                {
                    Set(text, "status_date", "2026-06-30");
                    Row(text, "status", "PLT.2.1.2")["etc"] = "5000";
                },
                text => Set(text, "status_date", "2026-05-31")
            ),
            new(
                "late_chain",
                "PLT.2.1.2",
                text =>
                {
                    Row(text, "status", "PLT.2.1.2")["remaining"] = "39";
                    AddFollowers(text);
                },
                // twenty working days, not more
                text =>
                {
                    Row(text, "status", "PLT.2.1.2")["remaining"] = "38";
                    AddFollowers(text);
                }
            ),
            new(
                "activities_disagree",
                "PLT.2.1.2",
                text => AddActivity(text, finished: "2026-03-31"),
                text => AddActivity(text, finished: "")
            ),
            new(
                "account_too_coarse",
                "A3",
                // at the end of April half of 20 000 is open, 10 000 of 45 000
                text => Set(text, "variance_threshold", "12.8"),
                // bias 5 000 and spread 2 887, together 5 774 or 12.83 %
                text => Set(text, "variance_threshold", "12.9")
            ),
            new(
                "cost_before_start",
                "PLT.3.2",
                text => Cost(text, "PLT.3.2", "1"),
                // level of effort reports no start
                text => Cost(text, "PLT.1", "1")
            ),
            new(
                "actual_above_committed",
                "PLT.3.1",
                text => Ordered(text, "24999.99"),
                text => Ordered(text, "25000")
            ),
        ];

    private static void Post(Plenum.Oracle.Tables.TextProject text, string amountOfA3)
    {
        text.Add("changes", ("change", "C-1"), ("title", "Contract"), ("state", "approved"));
        foreach (
            var (account, amount) in new[] { ("A1", "10000"), ("A2", "45000"), ("A3", amountOfA3) }
        )
        {
            text.Add(
                "postings",
                ("change", "C-1"),
                ("posting", account),
                ("from", "contract"),
                ("to", account),
                ("amount", amount)
            );
        }
    }

    private static void AddForgotten(Plenum.Oracle.Tables.TextProject text, bool linked)
    {
        AddElement(text, "PLT.3.3", "PLT.3", "Gutters");
        AddPackage(text, "PLT.3.3", "0/100", "2026-01-05", "2026-01-30");
        if (linked)
        {
            text.Add("links", ("from", "PLT.2.1.2"), ("to", "PLT.3.3"));
        }
    }

    private static void AddFollowers(Plenum.Oracle.Tables.TextProject text)
    {
        text.Add("links", ("from", "PLT.2.1.2"), ("to", "PLT.3.2"));
        text.Add("links", ("from", "PLT.2.1.2"), ("to", "PLT.2.2.2"));
        text.Add("links", ("from", "PLT.2.2.2"), ("to", "PLT.2.3.2"));
    }

    private static void AddActivity(Plenum.Oracle.Tables.TextProject text, string finished)
    {
        text.Add("activities", ("activity", "A-1"), ("package", "PLT.2.1.2"), ("duration", "20"));
        text.Add(
            "activity_status",
            ("activity", "A-1"),
            ("period", "P3"),
            ("started", "2026-03-02"),
            ("finished", finished)
        );
    }

    private static void Cost(Plenum.Oracle.Tables.TextProject text, string charge, string amount) =>
        text.Add(
            "actuals",
            ("document", "D-more"),
            ("line", "1"),
            ("charge", charge),
            ("period", "P3"),
            ("cost_element", "labour"),
            ("amount", amount)
        );

    private static void Ordered(Plenum.Oracle.Tables.TextProject text, string amount) =>
        text.Add(
            "commitments",
            ("order", "O-1"),
            ("line", "1"),
            ("package", "PLT.3.1"),
            ("cost_element", "labour"),
            ("amount", amount)
        );
}
