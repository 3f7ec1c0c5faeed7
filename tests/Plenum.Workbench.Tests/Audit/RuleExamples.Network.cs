using Plenum.Oracle.Tables;
using static Plenum.Workbench.Tests.Audit.SoundNetwork;
using static Plenum.Workbench.Tests.Audit.SoundProject;

namespace Plenum.Workbench.Tests.Audit;

internal static partial class RuleExamples
{
    /// <summary>True for an example that changes the sound project with its network.</summary>
    public static bool HasNetwork(RuleExample example) =>
        OfNetwork.Any(other => other.Rule == example.Rule);

    private static IEnumerable<RuleExample> OfNetwork =>
        [
            new(
                "network_not_computed",
                "PLT",
                text =>
                {
                    // another setting in its place
                    var start = Row(text, "project", "start");
                    (start["key"], start["value"]) = ("audit_loe_share", "15");
                },
                text => Set(text, "start", "2026-01-02")
            ),
            new(
                "open_start",
                "CRANE",
                text =>
                {
                    Activity(text, "CRANE", "PLT.3.2", 5, "Set up the crane");
                    Link(text, "CRANE", "FRAME");
                },
                text => Between(text, "CRANE", "PLT.3.1", "FRAME")
            ),
            new(
                "open_finish",
                "PAINT",
                text =>
                {
                    Activity(text, "PAINT", "PLT.3.2", 5, "Paint the frame");
                    Link(text, "FRAME", "PAINT");
                },
                text => Between(text, "PAINT", "FRAME", "OVER")
            ),
            new(
                "dangling_start",
                "PAINT",
                text =>
                {
                    Activity(text, "PAINT", "PLT.3.2", 5, "Paint the frame");
                    Link(text, "FRAME", "PAINT", "FF");
                    Link(text, "PAINT", "OVER");
                },
                text =>
                {
                    Between(text, "PAINT", "FRAME", "OVER");
                    Link(text, "SHEETS", "PAINT", "FF");
                }
            ),
            new(
                "dangling_finish",
                "PAINT",
                text =>
                {
                    Activity(text, "PAINT", "PLT.3.2", 5, "Paint the frame");
                    Link(text, "PLT.3.1", "PAINT");
                    Link(text, "PAINT", "SHEETS", "SS");
                },
                text =>
                {
                    Between(text, "PAINT", "PLT.3.1", "OVER");
                    Link(text, "PAINT", "SHEETS", "SS");
                }
            ),
            new(
                "link_with_lead",
                "SHEETS",
                text => Row(text, "links", "FRAME", "SHEETS")["lag"] = "-3",
                text => Row(text, "links", "FRAME", "SHEETS")["lag"] = "3"
            ),
            new(
                "start_to_finish_link",
                "SHEETS",
                text => Link(text, "PLT.2.1.2", "SHEETS", "SF"),
                text => Link(text, "PLT.2.1.2", "SHEETS", "FF")
            ),
            new(
                "redundant_link",
                "SHEETS",
                text =>
                {
                    Link(text, "PLT.2.1.2", "FRAME");
                    Link(text, "PLT.2.1.2", "SHEETS");
                },
                // with a lag it says more than the way through the frame
                text =>
                {
                    Link(text, "PLT.2.1.2", "FRAME");
                    Link(text, "PLT.2.1.2", "SHEETS", lag: "30");
                }
            ),
            new(
                "hard_condition",
                "SHEETS",
                text => Row(text, "activities", "SHEETS")["finish_no_later"] = "2026-06-30",
                text => Row(text, "activities", "SHEETS")["start_no_earlier"] = "2026-04-01"
            ),
            new(
                "negative_float",
                "FRAME",
                text => Row(text, "activities", "FRAME")["finish_no_later"] = "2026-04-27",
                // twenty working days from 1 April, Monday to Friday
                text => Row(text, "activities", "FRAME")["finish_no_later"] = "2026-04-28"
            ),
            new(
                "required_date_missed",
                "OVER",
                text => Row(text, "activities", "OVER")["required_by"] = "2026-05-27",
                text => Row(text, "activities", "OVER")["required_by"] = "2026-05-28"
            ),
            new(
                "required_before_start",
                "SHEETS",
                text => Need(text, "2026-05-04", "2026-05-01"),
                text => Need(text, "2026-05-04", "2026-05-04")
            ),
            new(
                "date_breaks_link",
                "SHEETS",
                text => Row(text, "activities", "SHEETS")["start_on"] = "2026-04-28",
                text => Row(text, "activities", "SHEETS")["start_on"] = "2026-04-29"
            ),
            new(
                "out_of_sequence",
                "SHEETS",
                text => Started(text, "SHEETS", "2026-03-30"),
                text => Started(text, "FRAME", "2026-03-30")
            ),
            new(
                "long_activity",
                "SHEETS",
                text => Row(text, "activities", "SHEETS")["duration"] = "45",
                text => Row(text, "activities", "SHEETS")["duration"] = "44"
            ),
            new(
                "unnamed_activity",
                "SHEETS",
                text => Row(text, "activities", "SHEETS")["name"] = "",
                text => Row(text, "activities", "SHEETS")["name"] = "Sheets"
            ),
            new(
                "forecast_in_the_past",
                "SHEETS",
                text => Row(text, "activities", "SHEETS")["start_on"] = "2026-03-30",
                text => Row(text, "activities", "SHEETS")["start_on"] = "2026-04-01"
            ),
            new(
                "actual_in_the_future",
                "FRAME",
                text => Started(text, "FRAME", "2026-04-02", "P4"),
                text => Started(text, "FRAME", "2026-03-31", "P3")
            ),
            new(
                "level_of_effort_drives",
                "PLT.1",
                text => Row(text, "status", "PLT.1", "P3")["remaining"] = "60",
                text => Row(text, "status", "PLT.1", "P3")["remaining"] = "41"
            ),
            new(
                "remaining_of_finished",
                "PLT.3.1",
                text => Row(text, "status", "PLT.3.1", "P3")["remaining"] = "5",
                text => Row(text, "status", "PLT.3.1", "P3")["remaining"] = "0"
            ),
        ];

    /// <summary>An activity of a week that waits for one and lets another wait.</summary>
    private static void Between(TextProject text, string code, string from, string to)
    {
        Activity(text, code, "PLT.3.2", 5, "Work of a week");
        Link(text, from, code);
        Link(text, code, to);
    }

    private static void Need(TextProject text, string start, string required)
    {
        var sheets = Row(text, "activities", "SHEETS");
        sheets["start_no_earlier"] = start;
        sheets["required_by"] = required;
    }

    private static void Started(TextProject text, string code, string day, string period = "P3") =>
        text.Add("activity_status", ("activity", code), ("period", period), ("started", day));
}
