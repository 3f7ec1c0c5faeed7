using static Plenum.Workbench.Tests.Audit.SoundProject;

namespace Plenum.Workbench.Tests.Audit;

internal static partial class RuleExamples
{
    public static IReadOnlyList<RuleExample> All { get; } =
    [
        .. OfScope,
        .. OfBreakdown,
        .. OfNames,
        .. OfPeople,
        .. OfNetwork,
        .. OfBaseline,
        .. OfStatus,
        .. OfForecast,
    ];

    private static IEnumerable<RuleExample> OfScope =>
        [
            new(
                "deliverable_not_covered",
                "S5",
                text =>
                    text.Add(
                        "scope",
                        ("item", "S5"),
                        ("kind", "deliverable"),
                        ("text", "A crane.")
                    ),
                // its sub-item is answered
                text =>
                {
                    text.Add(
                        "scope",
                        ("item", "S5"),
                        ("kind", "deliverable"),
                        ("text", "All else.")
                    );
                    text.Add(
                        "scope",
                        ("item", "S6"),
                        ("parent", "S5"),
                        ("kind", "deliverable"),
                        ("text", "A roof.")
                    );
                    text.Add("trace", ("item", "S6"), ("element", "PLT.3.2"), ("phrase", ""));
                }
            ),
            new(
                "deliverable_partly_covered",
                "S5",
                text =>
                {
                    text.Add(
                        "scope",
                        ("item", "S5"),
                        ("kind", "deliverable"),
                        ("text", "A crane and a gate.")
                    );
                    text.Add("trace", ("item", "S5"), ("element", "PLT.3"), ("phrase", "a gate"));
                },
                text =>
                {
                    text.Add(
                        "scope",
                        ("item", "S5"),
                        ("kind", "deliverable"),
                        ("text", "A crane and a gate.")
                    );
                    text.Add("trace", ("item", "S5"), ("element", "PLT.3"), ("phrase", "a gate"));
                    text.Add("trace", ("item", "S5"), ("element", "PLT.3"), ("phrase", "a crane"));
                }
            ),
            new(
                "requirement_not_covered",
                "S5",
                text =>
                    text.Add("scope", ("item", "S5"), ("kind", "requirement"), ("text", "Quiet.")),
                // an assumption needs no answer
                text => text.Add("scope", ("item", "S5"), ("kind", "assumption"), ("text", "Dry."))
            ),
            new(
                "exclusion_answered",
                "S4",
                text => text.Add("trace", ("item", "S4"), ("element", "PLT.3"), ("phrase", "")),
                text =>
                {
                    text.Add("scope", ("item", "S5"), ("kind", "constraint"), ("text", "By day."));
                    text.Add("trace", ("item", "S5"), ("element", "PLT.3"), ("phrase", ""));
                }
            ),
            new(
                "nobody_asked",
                "PLT.4",
                text =>
                {
                    AddElement(text, "PLT.4", "PLT", "Garden");
                    AddPackage(text, "PLT.4");
                },
                // below an element that is asked for
                text =>
                {
                    AddElement(text, "PLT.3.3", "PLT.3", "Gutters");
                    AddPackage(text, "PLT.3.3");
                }
            ),
        ];

    private static IEnumerable<RuleExample> OfPeople =>
        [
            new(
                "account_overlap",
                "A4",
                text =>
                    text.Add(
                        "accounts",
                        ("account", "A4"),
                        ("element", "PLT.3.2"),
                        ("unit", "OFF"),
                        ("manager", "ann")
                    ),
                // two units on one element are two accounts
                text =>
                    text.Add(
                        "accounts",
                        ("account", "A4"),
                        ("element", "PLT.3"),
                        ("unit", "OFF"),
                        ("manager", "ann")
                    )
            ),
            new(
                "package_without_account",
                "PLT.4",
                text =>
                {
                    AddElement(text, "PLT.4", "PLT", "Garden");
                    AddPackage(text, "PLT.4");
                },
                text =>
                {
                    AddElement(text, "PLT.4", "PLT", "Garden");
                    AddPackage(text, "PLT.4");
                    text.Add(
                        "accounts",
                        ("account", "A4"),
                        ("element", "PLT.4"),
                        ("unit", "WRK"),
                        ("manager", "ann")
                    );
                }
            ),
            new(
                "account_of_another_unit",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["unit"] = "OFF",
                text => Element(text, "PLT.3.2")["unit"] = "WRK"
            ),
            new(
                "package_without_person",
                "PLT.3.2",
                text => Element(text, "PLT")["person"] = "",
                text =>
                {
                    Element(text, "PLT")["person"] = "";
                    foreach (var part in new[] { "PLT.1", "PLT.2", "PLT.3" })
                    {
                        Element(text, part)["person"] = "ann";
                    }
                }
            ),
            new(
                "account_too_large",
                "A2",
                text => Set(text, "audit_account_packages", "5"),
                text => Set(text, "audit_account_packages", "6")
            ),
        ];

    private static IEnumerable<RuleExample> OfForecast =>
        [
            new(
                "package_estimate_low",
                "PLT.2.1.2",
                text => Row(text, "status", "PLT.2.1.2")["etc"] = "2499",
                text => Row(text, "status", "PLT.2.1.2")["etc"] = "2500"
            ),
            new(
                "estimate_below_index",
                "A2",
                // 30 000 earned for 36 000, CPI 0.83; 15 000 left for 15 000, TCPI 1.00
                text => Row(text, "actuals", "D-PLT.2.1.1")["amount"] = "11000",
                // for 31 000, CPI 0.97
                text => Row(text, "actuals", "D-PLT.2.1.1")["amount"] = "6000"
            ),
            new(
                "estimate_below_committed",
                "PLT.3.2",
                text => Order(text, "20001"),
                text => Order(text, "20000")
            ),
            new(
                "hidden_offsets",
                "A2",
                text =>
                {
                    Row(text, "actuals", "D-PLT.2.1.1")["amount"] = "15000";
                    Row(text, "actuals", "D-PLT.2.2.1")["amount"] = "100";
                    Row(text, "actuals", "D-PLT.2.3.1")["amount"] = "100";
                },
                // what is lost stays within the threshold, 6 750
                text =>
                {
                    Row(text, "actuals", "D-PLT.2.1.1")["amount"] = "11750";
                    Row(text, "actuals", "D-PLT.2.2.1")["amount"] = "100";
                }
            ),
        ];

    private static void Order(Plenum.Oracle.Tables.TextProject text, string amount) =>
        text.Add(
            "commitments",
            ("order", "O-1"),
            ("line", "1"),
            ("package", "PLT.3.2"),
            ("cost_element", "labour"),
            ("amount", amount)
        );
}
