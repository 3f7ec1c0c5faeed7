using System.Globalization;
using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>
/// An invented pumping plant in which the audit finds nothing, at the end of the third of six months. Examples of the
/// rules change it.
/// </summary>
internal static class SoundProject
{
    private static readonly string[] Trains = ["A", "B", "C"];

    public static TextProject Make()
    {
        var text = new TextProject();
        Set(text, "code", "PLT");
        Set(text, "name", "Harbour pumping plant");
        Set(text, "currency", "EUR");
        Set(text, "start", "2026-01-01");
        Set(text, "status_date", "2026-03-31");
        Set(text, "variance_threshold", "15");
        for (var month = 1; month <= 6; month++)
        {
            text.Add(
                "periods",
                ("period", Number("P", month)),
                (
                    "end",
                    new DateOnly(2026, month, DateTime.DaysInMonth(2026, month)).ToString(
                        "yyyy-MM-dd",
                        CultureInfo.InvariantCulture
                    )
                )
            );
        }

        text.Add("units", ("unit", "WRK"), ("name", "Works"));
        text.Add("units", ("unit", "OFF"), ("name", "Head office"));
        text.Add("people", ("person", "ann"), ("name", "Ann Dorn"), ("unit", "WRK"));
        text.Add("part_types", ("part_type", "train"), ("name", "Pumping train"));
        text.Add("part_types", ("part_type", "hall"), ("name", "Hall"));
        text.Add("work_sets", ("part_type", "train"), ("activity", "Design"), ("order", "1"));
        text.Add("work_sets", ("part_type", "train"), ("activity", "Delivery"), ("order", "2"));
        AddBreakdown(text);
        AddScope(text);
        AddStatus(text);
        return text;
    }

    /// <summary>Sets a key of the project.</summary>
    public static void Set(TextProject text, string key, string value)
    {
        var row = text.Rows("project").FirstOrDefault(row => row["key"] == key);
        (row ?? text.Add("project", ("key", key)))["value"] = value;
    }

    /// <summary>The row of a table whose first columns have these values.</summary>
    public static TextRow Row(TextProject text, string table, params string[] key) =>
        text.Rows(table)
            .Single(row =>
                key.SequenceEqual(row.Columns.Take(key.Length).Select(column => row[column]))
            );

    public static TextRow Element(TextProject text, string code) => Row(text, "elements", code);

    public static TextRow Package(TextProject text, string code) => Row(text, "packages", code);

    /// <summary>Adds an element with a dictionary entry and a split by part if it is a branch.</summary>
    public static TextRow AddElement(
        TextProject text,
        string code,
        string parent,
        string name,
        string kind = "work_package"
    ) =>
        text.Add(
            "elements",
            ("code", code),
            ("parent", parent),
            ("name", name),
            ("kind", kind),
            ("split", kind == "branch" ? "part" : ""),
            ("output", "Built and handed over"),
            ("acceptance", "Accepted by the client")
        );

    /// <summary>Adds a package that begins in May, with budget, hours and account.</summary>
    public static TextRow AddPackage(
        TextProject text,
        string code,
        string technique = "50/50",
        string start = "2026-05-04",
        string finish = "2026-05-29",
        string amount = "100",
        string hours = "10"
    )
    {
        text.Add(
            "budget",
            ("package", code),
            ("cost_element", "labour"),
            ("amount", amount),
            ("hours", hours)
        );
        return text.Add(
            "packages",
            ("package", code),
            ("technique", technique),
            ("start", start),
            ("finish", finish),
            ("spread", "even")
        );
    }

    public static string Number(string prefix, int number) =>
        prefix + number.ToString(CultureInfo.InvariantCulture);

    private static void AddBreakdown(TextProject text)
    {
        var root = AddElement(text, "PLT", "", "Harbour pumping plant", "project");
        root["split"] = "part";
        root["person"] = "ann";
        root["unit"] = "WRK";
        root["allotted"] = "100000";
        root["allotted_hours"] = "1000";
        AddElement(text, "PLT.1", "PLT", "Project management");
        AddPackage(text, "PLT.1", "loe", "2026-01-01", "2026-06-30", "10000", "100");
        AddElement(text, "PLT.2", "PLT", "Pumping trains", "branch");
        for (var train = 1; train <= Trains.Length; train++)
        {
            var code = Number("PLT.2.", train);
            var element = AddElement(text, code, "PLT.2", "Train " + Trains[train - 1], "branch");
            element["split"] = "phase";
            element["part_type"] = "train";
            AddElement(text, code + ".1", code, "Design")["activity"] = "Design";
            AddElement(text, code + ".2", code, "Delivery")["activity"] = "Delivery";
            AddPackage(text, code + ".1", "0/100", "2026-01-05", "2026-01-30", "5000", "50");
            AddPackage(text, code + ".2", "50/50", "2026-03-02", "2026-04-24", "10000", "100");
        }

        AddElement(text, "PLT.3", "PLT", "Pump hall", "branch")["part_type"] = "hall";
        var foundations = AddElement(text, "PLT.3.1", "PLT.3", "Foundations");
        foundations["quantity"] = "100";
        foundations["quantity_unit"] = "m³";
        AddPackage(text, "PLT.3.1", "units", "2026-02-02", "2026-03-27", "25000", "250");
        AddElement(text, "PLT.3.2", "PLT.3", "Roof");
        AddPackage(text, "PLT.3.2", "milestones", "2026-04-01", "2026-05-29", "20000", "200");
        text.Add(
            "milestones",
            ("package", "PLT.3.2"),
            ("milestone", "frame"),
            ("weight", "1"),
            ("planned", "2026-04-30")
        );
        text.Add(
            "milestones",
            ("package", "PLT.3.2"),
            ("milestone", "sheets"),
            ("weight", "1"),
            ("planned", "2026-05-29")
        );
        foreach (var part in new[] { "1", "2", "3" })
        {
            text.Add(
                "accounts",
                ("account", "A" + part),
                ("element", "PLT." + part),
                ("unit", "WRK"),
                ("manager", "ann")
            );
        }
    }

    private static void AddScope(TextProject text)
    {
        Item("S1", "deliverable", "Three pumping trains.");
        Item("S2", "deliverable", "A hall with a roof over the trains.");
        Item("S3", "requirement", "One person manages the work.");
        Item("S4", "exclusion", "Dredging of the harbour.");
        text.Add("trace", ("item", "S1"), ("element", "PLT.2"), ("phrase", ""));
        text.Add("trace", ("item", "S2"), ("element", "PLT.3"), ("phrase", "A hall"));
        text.Add("trace", ("item", "S2"), ("element", "PLT.3.2"), ("phrase", "a roof"));
        text.Add("trace", ("item", "S3"), ("element", "PLT.1"), ("phrase", ""));
        text.Add(
            "register",
            ("entry", "I-1"),
            ("element", "PLT.2"),
            ("kind", "interface"),
            ("text", "Loads on the floor"),
            ("need_by", "2026-05-01"),
            ("promised", "2026-04-15")
        );

        void Item(string item, string kind, string wording) =>
            text.Add("scope", ("item", item), ("kind", kind), ("text", wording));
    }

    private static void AddStatus(TextProject text)
    {
        for (var train = 1; train <= Trains.Length; train++)
        {
            var code = Number("PLT.2.", train);
            text.Add(
                "status",
                ("package", code + ".1"),
                ("period", "P1"),
                ("started", "2026-01-05"),
                ("finished", "2026-01-30")
            );
            text.Add(
                "status",
                ("package", code + ".2"),
                ("period", "P3"),
                ("started", "2026-03-02"),
                ("etc", "5000"),
                ("remaining", "18")
            );
            Cost(code + ".1", "P1", "5000");
            Cost(code + ".2", "P3", "5000");
        }

        text.Add(
            "status",
            ("package", "PLT.3.1"),
            ("period", "P3"),
            ("started", "2026-02-02"),
            ("finished", "2026-03-27"),
            ("units_done", "100")
        );
        Cost("PLT.3.1", "P3", "25000");
        Cost("PLT.1", "P3", "4970");

        void Cost(string charge, string period, string amount) =>
            text.Add(
                "actuals",
                ("document", "D-" + charge),
                ("line", "1"),
                ("charge", charge),
                ("period", period),
                ("cost_element", "labour"),
                ("amount", amount)
            );
    }
}
