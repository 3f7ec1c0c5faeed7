using System.Buffers;
using System.Globalization;
using Plenum.Core;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

public class MapDocumentTests
{
    [Fact]
    public void The_map_says_of_every_element_what_the_breakdown_says() =>
        Documents.ForMany(
            (which, project) =>
            {
                var map = Documents.Map(project);
                var rows = new TreeQuestion().Ask(project).Rows;
                var scale = (double)Math.Pow(10, map.Decimals);
                Assert.Equal(rows.Select(row => row.Code), map.Codes);
                Assert.Equal(rows.Select(row => row.Name), map.Names);
                Assert.Equal(rows.Select(row => row.Level), map.Levels);
                for (var i = 0; i < rows.Count; i++)
                {
                    var row = rows[i];
                    var isPackage = row.Kind is "work_package" or "planning_package";
                    var isSame =
                        map.Budgets[i] == Math.Round((double)row.Budget * scale)
                        && map.Hours[i] == (double)row.Hours
                        && map.Gaps[i].Equals(GapOf(row.Gap * (decimal)scale, map.Flags[i]))
                        && isPackage == ((map.Flags[i] & 1) == 1)
                        && row.Kind == "planning_package" == ((map.Flags[i] & 8) == 8);
                    Assert.True(
                        isSame,
                        $"{which}, {row}: {map.Budgets[i]}, {map.Hours[i]}, {map.Gaps[i]}"
                    );
                }
            }
        );

    [Fact]
    public void The_map_carries_revision_currency_and_accounts_of_its_project() =>
        Documents.ForMany(
            (_, project) =>
            {
                var map = Documents.Map(project);
                Assert.Equal(project.Revision, map.Revision);
                Assert.Equal(project.Settings.Currency.Code, map.Currency);
                Assert.Equal(project.Settings.Currency.Digits, map.Decimals);
                Assert.Equal(
                    project.Placement.Accounts.Codes.ToArray().OfType<string>(),
                    map.AccountCodes
                );
            }
        );

    [Fact]
    public void An_outlined_element_has_all_its_packages_in_the_account() =>
        Documents.ForMany(
            (which, project) =>
            {
                var map = Documents.Map(project);
                var tree = project.Tree;
                for (var row = 0; row < tree.Count; row++)
                {
                    int[] accounts =
                    [
                        .. Enumerable
                            .Range(row, tree.SubtreeEnd[row] - row)
                            .Select(at => tree.PackageOfRow[at])
                            .Where(package => package >= 0)
                            .Select(package => project.Placement.AccountOfPackage[package])
                            .Distinct(),
                    ];
                    Assert.True(
                        map.Accounts[row] < 0
                            || accounts is [var only] && only == map.Accounts[row],
                        $"{which}, {tree.Code(row)}: {string.Join(", ", accounts)}"
                    );
                    // every package is outlined unless it is in no account or lies above where outlines begin
                    Assert.True(
                        map.Accounts[row] >= 0
                            || accounts is not [>= 0]
                            || tree.Level[row]
                                <= tree.Level[project.Placement.ElementRow[accounts[0]]],
                        $"{which}, {tree.Code(row)} is not outlined"
                    );
                }
            }
        );

    [Fact]
    public void Sisters_are_outlined_on_the_same_level_whether_they_have_one_account_or_more()
    {
        var text = new TextProject();
        foreach (
            var (code, parent) in (ReadOnlySpan<(string, string)>)
                [
                    ("P", ""),
                    ("P.1", "P"),
                    ("P.2", "P"),
                    ("P.1.1", "P.1"),
                    ("P.1.2", "P.1"),
                    ("P.2.1", "P.2"),
                ]
        )
        {
            text.Add("elements", ("code", code), ("parent", parent), ("name", code));
        }

        text.Add("units", ("unit", "MEC"));
        text.Add("units", ("unit", "ELE"));
        text.Add("people", ("person", "a"));
        AddAccount("P.1", "MEC");
        AddAccount("P.1", "ELE");
        AddAccount("P.2", "MEC");
        text.Add("packages", ("package", "P.1.1"), ("account", "P.1-MEC"));
        text.Add("packages", ("package", "P.1.2"), ("account", "P.1-ELE"));
        var map = Documents.Map(Answers.Import(text));
        Assert.Equal(
            ["", "", "P.1-MEC", "P.1-ELE", "", "P.2-MEC"],
            map.Accounts.Select(account => account < 0 ? "" : map.AccountCodes[account])
        );

        void AddAccount(string element, string unit) =>
            text.Add(
                "accounts",
                ("account", element + "-" + unit),
                ("element", element),
                ("unit", unit),
                ("manager", "a")
            );
    }

    [Fact]
    public void An_account_that_has_its_element_to_itself_is_outlined_there()
    {
        var text = new TextProject();
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "P"));
        text.Add("elements", ("code", "P.1"), ("parent", "P"), ("name", "P.1"));
        text.Add("elements", ("code", "P.1.1"), ("parent", "P.1"), ("name", "P.1.1"));
        text.Add("units", ("unit", "MEC"));
        text.Add("people", ("person", "a"));
        text.Add(
            "accounts",
            ("account", "A"),
            ("element", "P.1"),
            ("unit", "MEC"),
            ("manager", "a")
        );
        Assert.Equal([-1, 0, 0], Documents.Map(Answers.Import(text)).Accounts);
    }

    [Fact]
    public void A_root_alone_is_a_gap_of_unknown_size()
    {
        var map = Documents.Map(Documents.OfElements(("P", "", "")), MapFindings.None);
        Assert.Equal(["P"], map.Codes);
        Assert.Equal([2], map.Flags);
        Assert.Equal([double.NaN], map.Gaps);
        Assert.Equal([double.NaN], map.GapsInHours);
        Assert.Equal(["Project"], map.LevelNames);
        Assert.Empty(map.AccountCodes);
    }

    [Fact]
    public void A_branch_without_parts_is_a_gap_of_what_it_was_allotted()
    {
        var text = new TextProject();
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "P"), ("allotted", "90"));
        text.Add(
            "elements",
            ("code", "P.1"),
            ("parent", "P"),
            ("name", "Pier"),
            ("kind", "branch"),
            ("allotted", "75.5")
        );
        var map = Documents.Map(Answers.Import(text), MapFindings.None);
        Assert.Equal([0, 2], map.Flags);
        Assert.Equal([1_450, 7_550], map.Gaps);
        Assert.Equal([0, double.NaN], map.GapsInHours);
    }

    [Fact]
    public void A_breakdown_of_twenty_levels_is_shown_whole()
    {
        var elements = Enumerable
            .Range(1, 20)
            .Select(level => (CodeOf(level), level == 1 ? "" : CodeOf(level - 1), ""));
        var map = Documents.Map(Documents.OfElements([.. elements]));
        Assert.Equal(Enumerable.Range(1, 20), map.Levels);
        Assert.Equal("Level 19", map.LevelNames[18]);
        Assert.Equal("Work package", map.LevelNames[19]);

        static string CodeOf(int level) => "L" + level.ToString(CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_project_without_elements_has_no_map()
    {
        var refusal = Assert.Throws<QuestionException>(() => Documents.Bytes(Project.Empty));
        Assert.Equal(
            "The project has no element yet. Import elements, and the map shows them.",
            refusal.Message
        );
    }

    [Fact]
    public void More_levels_than_a_map_shows_are_refused()
    {
        var elements = Enumerable
            .Range(1, 65)
            .Select(level => ($"{level}", level == 1 ? "" : $"{level - 1}", ""));
        var project = Documents.OfElements([.. elements]);
        var refusal = Assert.Throws<QuestionException>(() => Documents.Bytes(project));
        Assert.Equal("The breakdown has 65 levels. The map shows up to 64.", refusal.Message);
    }

    [Fact]
    public void Levels_are_called_what_the_project_calls_them()
    {
        var text = new TextProject();
        text.Add("project", ("key", "level_names"), ("value", "Anlage; Système ;Part"));
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "P"));
        text.Add("elements", ("code", "P.1"), ("parent", "P"), ("name", "P.1"));
        Assert.Equal(["Anlage", "Système"], Documents.Map(Answers.Import(text)).LevelNames);
    }

    [Fact]
    public void The_demo_names_its_levels() =>
        Assert.Equal(
            ["Project", "System", "Subsystem", "Component", "Work package"],
            Documents.Map(Documents.Demo).LevelNames
        );

    [Theory]
    [InlineData("")]
    [InlineData("Plant;;Part")]
    [InlineData("Plant;A name for a level that is longer than anybody could read beside a map")]
    public void Names_of_levels_that_are_empty_or_too_long_are_refused(string names)
    {
        using var folder = new TemporaryFolder();
        folder.Write("project.csv", $"key,value\nlevel_names,{names}\n");
        var result = Exchange.Import.Importer.Run(
            Project.Empty,
            [folder.Path],
            replace: false,
            ct: TestContext.Current.CancellationToken
        );
        Assert.Equal("project.csv", Assert.Single(result.Errors.Items).File);
    }

    [Fact]
    public void A_planted_fault_of_the_breakdown_is_marked_and_nothing_else_is()
    {
        var map = Documents.Map(Documents.Demo);
        string[] chapters = ["Scope", "Breakdown", "People", "Estimate", "Baseline"];
        string[] namingAccounts = ["account_overlap", "ledger_differs_from_packages"];
        var rules = ProjectAudit
            .Rules(Documents.Demo)
            .Where(rule =>
                chapters.Any(chapter => rule.GetType().Namespace == $"Plenum.Core.{chapter}.Audit")
                && !namingAccounts.Contains(rule.Name)
            )
            .Select(rule => rule.Name)
            .ToHashSet(StringComparer.Ordinal);
        var expected = new CheckQuestion()
            .Ask(Documents.Demo)
            .Findings.Where(finding => rules.Contains(finding.Rule))
            .Select(finding => finding.Code)
            .Where(code => Documents.Demo.Tree.Elements.RowOfCode(code) >= 0)
            .Distinct()
            .Order(StringComparer.Ordinal);
        Assert.Equal(
            expected,
            map.Codes.Where((_, i) => (map.Flags[i] & 4) == 4).Order(StringComparer.Ordinal)
        );
        Assert.All(
            Documents.Map(Documents.Demo, MapFindings.None).Flags,
            flags => Assert.Equal(0, flags & 4)
        );
    }

    [Fact]
    public void The_bytes_do_not_depend_on_what_takes_them()
    {
        var output = new ArrayBufferWriter<byte>();
        MapDocument.Write(Documents.Demo, output);
        Assert.Equal(Documents.Bytes(Documents.Demo), output.WrittenSpan.ToArray());
    }

    private static double GapOf(decimal? gap, int flags) =>
        gap is { } size ? (double)size
        : (flags & 2) == 2 ? double.NaN
        : 0;
}
