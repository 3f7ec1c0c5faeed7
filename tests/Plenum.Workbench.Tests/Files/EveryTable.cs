using System.Globalization;
using Plenum.Oracle.Generator;
using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Files;

/// <summary>
/// Generated projects with rows in every table of docs/files.md: what earned value needs comes from the generator of
/// the slow model, the rest is added here, with awkward texts, fields of the user's own and taken-back values.
/// </summary>
internal static class EveryTable
{
    private static readonly string[] AwkwardTexts =
    [
        "plain",
        "with, comma; semicolon\tand tab",
        "with \"quotes\"",
        "two\nlines",
        "=1+1",
        " outer spaces ",
        "Überströmventil Ø 25 → 中文",
        "0123",
        "1e3",
        "-",
    ];

    public static TextProject Project(int seed)
    {
        var text = ProjectGenerator.Project(seed);
        var random = new Random(seed);
        string[] elements = Codes(text, "elements", "code");
        string[] packages = Packages(text);
        string[] periods = Codes(text, "periods", "period");
        AddScope(text, random, elements);
        AddParts(text, random, elements);
        AddRegister(text, random, elements);
        AddNetwork(text, random, packages, periods);
        AddEstimate(text, random, packages);
        AddDelegations(text, random, packages);
        if (text.Rows("changes").Count == 0)
        {
            text.Add(
                "changes",
                ("change", "C-1"),
                ("title", "Contract"),
                ("state", "approved"),
                ("decided_on", "2026-01-05")
            );
        }

        text.Add("split_words", ("word", "skid*"), ("role", "part"), ("strength", "2"));
        text.Add("split_words", ("word", "bay"), ("role", "place"), ("strength", ""));
        text.Add(
            "accepted_findings",
            ("rule", "levels"),
            ("code", elements[0]),
            ("reason", Pick(random, AwkwardTexts)),
            ("by", "ann")
        );
        foreach (var row in text.Rows("elements"))
        {
            row["description"] = Pick(random, AwkwardTexts);
            row["x_area"] = random.Next(2) == 0 ? "" : Pick(random, AwkwardTexts);
        }

        return text;
    }

    private static void AddScope(TextProject text, Random random, string[] elements)
    {
        string[] kinds =
        [
            "deliverable",
            "requirement",
            "exclusion",
            "assumption",
            "constraint",
            "acceptance",
        ];
        text.Add("scope_revisions", ("revision", "1"), ("signed", "2025-11-20"), ("note", ""));
        text.Add(
            "scope_revisions",
            ("revision", "B"),
            ("signed", ""),
            ("note", Pick(random, AwkwardTexts))
        );
        for (var item = 1; item <= 6; item++)
        {
            text.Add(
                "scope",
                ("item", Number("S", item)),
                ("parent", item > 1 && random.Next(2) == 0 ? "S1" : ""),
                ("kind", Pick(random, kinds)),
                ("text", Pick(random, AwkwardTexts)),
                ("clause", "4." + item.ToString(CultureInfo.InvariantCulture)),
                ("revision", item == 2 ? "B" : ""),
                ("withdrawn", item == 6 ? "1" : "")
            );
        }

        text.Add(
            "scope_wordings",
            ("item", "S2"),
            ("revision", "B"),
            ("kind", Pick(random, kinds)),
            ("text", Pick(random, AwkwardTexts)),
            ("clause", ""),
            ("since", "1")
        );
        text.Add("scope_phrases", ("item", "S4"), ("phrase", Pick(random, AwkwardTexts)));
        text.Add(
            "queries",
            ("query", "Q1"),
            ("item", "S4"),
            ("text", Pick(random, AwkwardTexts)),
            ("asked", "2026-03-02"),
            ("asked_by", "ann"),
            ("answer", Pick(random, AwkwardTexts)),
            ("answered", "2026-03-02")
        );
        text.Add(
            "queries",
            ("query", "Q2"),
            ("item", ""),
            ("text", "Is it?"),
            ("asked", ""),
            ("asked_by", ""),
            ("answer", ""),
            ("answered", "")
        );

        text.Add("trace", ("item", "S2"), ("element", Pick(random, elements)), ("phrase", ""));
        text.Add("trace", ("item", "S3"), ("element", elements[0]), ("phrase", "a phrase"));
        text.Add("trace", ("item", "S3"), ("element", elements[0]), ("phrase", "another, phrase"));
    }

    private static void AddParts(TextProject text, Random random, string[] elements)
    {
        text.Add("part_types", ("part_type", "PUMP"), ("name", "Pump"));
        text.Add(
            "work_sets",
            ("part_type", "PUMP"),
            ("activity", "design"),
            ("facet", "engineering"),
            ("order", "1"),
            ("share", "12.5"),
            ("duration", "20"),
            ("technique", "0/100"),
            ("after", ""),
            ("hazards", "")
        );
        text.Add(
            "work_sets",
            ("part_type", "PUMP"),
            ("activity", "erection"),
            ("facet", "construction"),
            ("order", "2"),
            ("share", ""),
            ("duration", ""),
            ("technique", "milestones"),
            ("after", "design"),
            ("hazards", "lifting;pressure")
        );
        text.Add(
            "not_needed",
            ("element", Pick(random, elements)),
            ("activity", "design"),
            ("reason", "bought as it is")
        );
        text.Add(
            "left_out",
            ("element", Pick(random, elements)),
            ("part", "Stand-by; generator"),
            ("reason", "two feeders are there"),
            ("standard", "pumping-station")
        );
    }

    private static void AddRegister(TextProject text, Random random, string[] elements)
    {
        text.Add(
            "register",
            ("entry", "R1"),
            ("element", Pick(random, elements)),
            ("kind", "risk"),
            ("text", Pick(random, AwkwardTexts)),
            ("owner", "somebody"),
            ("low", "-5"),
            ("likely", "10"),
            ("high", "20"),
            ("days_low", "-1.5"),
            ("days_likely", "0"),
            ("days_high", "3.25"),
            ("need_by", "2026-05-01")
        );
    }

    private static void AddNetwork(
        TextProject text,
        Random random,
        string[] packages,
        string[] periods
    )
    {
        if (packages.Length == 0)
        {
            return;
        }

        text.Add(
            "activities",
            ("activity", "A1"),
            ("package", packages[0]),
            ("name", Pick(random, AwkwardTexts)),
            ("duration", "10"),
            ("start_no_earlier", "2026-02-02"),
            ("low", "8"),
            ("high", "15")
        );
        text.Add(
            "activities",
            ("activity", "A2"),
            ("package", packages[0]),
            ("name", ""),
            ("duration", "0"),
            ("required_by", "2026-09-30")
        );
        text.Add("links", ("from", "A1"), ("to", "A2"), ("type", ""), ("lag", "-3"));
        text.Add("links", ("from", "A1"), ("to", "A2"), ("type", "SS"), ("lag", ""));
        if (packages.Length > 1)
        {
            text.Add("links", ("from", "A2"), ("to", packages[1]), ("type", "FF"), ("lag", "2"));
        }

        if (periods.Length > 0)
        {
            text.Add(
                "activity_status",
                ("activity", "A1"),
                ("period", periods[^1]),
                ("started", "-"),
                ("finished", ""),
                ("remaining", "4")
            );
        }
    }

    private static void AddDelegations(TextProject text, Random random, string[] packages)
    {
        if (packages.Length == 0 || text.Rows("people").Count == 0)
        {
            return;
        }

        text.Add(
            "delegations",
            ("package", packages[0]),
            ("person", Pick(random, Codes(text, "people", "person"))),
            ("state", "open"),
            ("offered", "2026-01-05"),
            ("accepted", ""),
            ("opened", "2026-01-12"),
            ("note", Pick(random, AwkwardTexts))
        );
    }

    private static void AddEstimate(TextProject text, Random random, string[] packages)
    {
        if (packages.Length == 0)
        {
            return;
        }

        text.Add(
            "estimate",
            ("package", packages[0]),
            ("cost_element", "labour"),
            ("line", ""),
            ("quantity", "12.3456789"),
            ("unit", "m³"),
            ("hours_per_unit", "0.75"),
            ("rate", "61.5"),
            ("amount", "569"),
            ("low", "500"),
            ("likely", "569"),
            ("high", "700"),
            ("class", "3"),
            ("basis", Pick(random, AwkwardTexts)),
            ("base_date", "2026-01-01"),
            ("currency", "")
        );
        text.Add(
            "estimate",
            ("package", packages[0]),
            ("cost_element", "labour"),
            ("line", "2"),
            ("amount", "12345"),
            ("currency", "JPY")
        );
    }

    private static string[] Packages(TextProject text)
    {
        HashSet<string> parents = [.. text.Rows("elements").Select(row => row["parent"])];
        return
        [
            .. text.Rows("elements")
                .Where(row =>
                    row["parent"] != "" && !parents.Contains(row["code"]) && row["kind"] != "branch"
                )
                .Select(row => row["code"]),
        ];
    }

    private static string[] Codes(TextProject text, string table, string column) =>
        [.. text.Rows(table).Select(row => row[column])];

    private static string Pick(Random random, string[] texts) => texts[random.Next(texts.Length)];

    private static string Number(string prefix, int number) =>
        prefix + number.ToString(CultureInfo.InvariantCulture);
}
