using static Plenum.Workbench.Tests.Audit.SoundProject;

namespace Plenum.Workbench.Tests.Audit;

internal static partial class RuleExamples
{
    private static IEnumerable<RuleExample> OfBreakdown =>
        [
            new(
                "gap",
                "PLT",
                text => Element(text, "PLT")["allotted"] = "100001",
                text => Element(text, "PLT.3")["allotted"] = "45000"
            ),
            new(
                "more_than_the_whole",
                "PLT",
                text => Element(text, "PLT")["allotted"] = "99999.99",
                text => Element(text, "PLT")["allotted"] = ""
            ),
            new(
                "gap_in_hours",
                "PLT",
                text => Element(text, "PLT")["allotted_hours"] = "1000.01",
                text => Element(text, "PLT.3")["allotted_hours"] = "450"
            ),
            new(
                "more_than_the_whole_in_hours",
                "PLT",
                text => Element(text, "PLT")["allotted_hours"] = "999",
                text => Element(text, "PLT")["allotted_hours"] = ""
            ),
            new(
                "gap_in_quantity",
                "PLT.2",
                text => Trains(text, whole: "4", each: "1"),
                text => Trains(text, whole: "3", each: "1")
            ),
            new(
                "more_than_the_whole_in_quantity",
                "PLT.2",
                text => Trains(text, whole: "2", each: "1"),
                // another unit cannot be compared
                text =>
                {
                    Trains(text, whole: "2", each: "1");
                    Element(text, "PLT.2.1")["quantity_unit"] = "t";
                }
            ),
            new(
                "not_broken_down",
                "PLT.3.3",
                text => AddElement(text, "PLT.3.3", "PLT.3", "Gutters", "branch"),
                text =>
                {
                    AddElement(text, "PLT.3.3", "PLT.3", "Gutters", "planning_package");
                    AddPackage(text, "PLT.3.3");
                }
            ),
            new(
                "single_child",
                "PLT.3.3",
                text =>
                {
                    AddElement(text, "PLT.3.3", "PLT.3", "Gutters", "branch");
                    AddElement(text, "PLT.3.3.1", "PLT.3.3", "Pipes");
                    AddPackage(text, "PLT.3.3.1");
                },
                text =>
                {
                    AddElement(text, "PLT.3.3", "PLT.3", "Gutters", "branch");
                    foreach (var part in new[] { "PLT.3.3.1", "PLT.3.3.2" })
                    {
                        AddElement(text, part, "PLT.3.3", "Pipes " + part);
                        AddPackage(text, part);
                    }
                }
            ),
            new(
                "levels",
                "PLT",
                text => Set(text, "audit_levels_most", "3"),
                text => Set(text, "audit_levels_least", "4")
            ),
            new(
                "two_logics",
                "PLT.3",
                text =>
                {
                    foreach (
                        var part in new[] { "North section", "South section", "Commissioning" }
                    )
                    {
                        AddElement(text, "PLT.3." + part, "PLT.3", part);
                        AddPackage(text, "PLT.3." + part);
                    }
                },
                text =>
                {
                    foreach (var part in new[] { "Doors", "Windows", "Lights" })
                    {
                        AddElement(text, "PLT.3." + part, "PLT.3", part);
                        AddPackage(text, "PLT.3." + part);
                    }
                }
            ),
            new(
                "split_differs_from_names",
                "PLT.2.1",
                text => Element(text, "PLT.2.1")["split"] = "contract",
                // a logic of the project's own cannot be compared
                text => Element(text, "PLT.2.1")["split"] = "season"
            ),
            new(
                "split_not_declared",
                "PLT.2",
                text => Element(text, "PLT.2")["split"] = "",
                text => Element(text, "PLT.2")["split"] = "season"
            ),
            new(
                "missing_activity",
                "PLT.2.1",
                text => Element(text, "PLT.2.1.1")["activity"] = "",
                text =>
                {
                    Element(text, "PLT.2.1.1")["activity"] = "";
                    NotNeeded(text, "PLT.2.1", "Design");
                }
            ),
            new(
                "planned_and_not_needed",
                "PLT.2.1",
                text => NotNeeded(text, "PLT.2.1", "Design"),
                text => NotNeeded(text, "PLT.2.1", "Painting")
            ),
            new(
                "sisters_differ",
                "PLT.2.1",
                text =>
                {
                    foreach (var train in new[] { "PLT.2.2", "PLT.2.3" })
                    {
                        AddElement(text, train + ".3", train, "Painting")["activity"] = "Painting";
                        AddPackage(text, train + ".3");
                    }
                },
                // one of the two others is not yet the rule
                text =>
                {
                    AddElement(text, "PLT.2.2.3", "PLT.2.2", "Painting")["activity"] = "Painting";
                    AddPackage(text, "PLT.2.2.3");
                }
            ),
            new(
                "management_missing",
                "PLT",
                text => Element(text, "PLT.1")["name"] = "Cranes",
                text => Element(text, "PLT.1")["name"] = "Site management and supervision"
            ),
            new(
                "software_apart",
                "PLT.1",
                text => Element(text, "PLT.1")["name"] = "Software",
                text => Element(text, "PLT.3.2")["name"] = "Software"
            ),
        ];

    private static IEnumerable<RuleExample> OfNames =>
        [
            new(
                "duplicate_name",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["name"] = "Foundations",
                // under different parents
                text => Element(text, "PLT.3.2")["name"] = "Design"
            ),
            new(
                "generic_name",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["name"] = "Other parts",
                text => Element(text, "PLT.3.2")["name"] = "General arrangement drawings"
            ),
            new(
                "name_not_a_part",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["name"] = "Weekly meetings",
                text => Element(text, "PLT.3.2")["name"] = "Meeting room"
            ),
            new(
                "named_as_activity",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["name"] = "Install roof",
                text => Element(text, "PLT.3.2")["name"] = "Installed roof"
            ),
            new(
                "root_name",
                "PLT",
                text => Element(text, "PLT")["name"] = "All the works",
                text => Element(text, "PLT")["name"] = "HARBOUR pumping plant, north"
            ),
            new(
                "code_out_of_place",
                "PLT.2.2",
                text => Element(text, "PLT.2.2")["parent"] = "PLT.3",
                text =>
                {
                    Set(text, "code_mask", "AAA.0.0.0");
                    Element(text, "PLT.2.2")["parent"] = "PLT.2";
                }
            ),
            new(
                "dictionary_incomplete",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["acceptance"] = "",
                text => Element(text, "PLT.3.2")["excluded"] = ""
            ),
            new(
                "dictionary_repeats_name",
                "PLT.3.2",
                text => Element(text, "PLT.3.2")["description"] = "roof.",
                text => Element(text, "PLT.3.2")["description"] = "Roof with gutters."
            ),
            new(
                "interface_late",
                "I-1",
                text => Row(text, "register", "I-1")["promised"] = "2026-05-02",
                text => Row(text, "register", "I-1")["promised"] = "2026-05-01"
            ),
        ];

    private static void Trains(Plenum.Oracle.Tables.TextProject text, string whole, string each)
    {
        foreach (var code in new[] { "PLT.2", "PLT.2.1", "PLT.2.2", "PLT.2.3" })
        {
            Element(text, code)["quantity"] = code == "PLT.2" ? whole : each;
            Element(text, code)["quantity_unit"] = "trains";
        }
    }

    private static void NotNeeded(
        Plenum.Oracle.Tables.TextProject text,
        string element,
        string activity
    ) =>
        text.Add(
            "not_needed",
            ("element", element),
            ("activity", activity),
            ("reason", "comes ready made")
        );
}
