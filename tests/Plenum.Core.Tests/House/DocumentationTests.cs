using System.Text.RegularExpressions;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Tests.House;

/// <summary>The pages that users read say what the code does.</summary>
public partial class DocumentationTests
{
    [Fact]
    public void The_page_of_file_layouts_has_every_table_with_its_columns_in_order()
    {
        var sections = Sections("files.md");
        Assert.Equal(
            ProjectLayout.Tables.Select(table => table.Name),
            sections.Select(section => section.Heading)
        );
        foreach (var (table, section) in ProjectLayout.Tables.Zip(sections))
        {
            Assert.Equal(
                table.Columns.Where(column => !column.IsComputed).Select(Written),
                ColumnCell().Matches(section.Text).Select(match => match.Groups["column"].Value)
            );
        }
    }

    [Fact]
    public void The_page_of_project_keys_has_every_key()
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "docs", "files.md"));
        Assert.All(
            ProjectSettings.Keys.Keys,
            key => Assert.Contains($"`{key}`", text, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_page_of_the_audit_has_every_rule()
    {
        var rules = ProjectAudit.Rules(OneElement()).Select(rule => rule.Name);
        Assert.Equal(
            rules.Order(StringComparer.Ordinal),
            Sections("audit.md").Select(section => section.Heading).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Every_rule_is_explained_with_severity_question_remedy_and_source()
    {
        var sections = Sections("audit.md")
            .ToDictionary(
                section => section.Heading,
                section => section.Text,
                StringComparer.Ordinal
            );
        Assert.All(
            ProjectAudit.Rules(OneElement()),
            rule =>
            {
                var text = sections[rule.Name];
                Assert.StartsWith(
                    $"**Severity** {rule.Severity.ToString().ToLowerInvariant()}.",
                    text.TrimStart(),
                    StringComparison.Ordinal
                );
                foreach (var part in (string[])["**Asks**", "**To do**", "**Source**"])
                {
                    Assert.Contains(part, text, StringComparison.Ordinal);
                }

                // a practitioner learns what is looked for and why it hurts, not only a name
                var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length;
                Assert.True(words >= 40, $"{rule.Name} is explained in {words} words");
            }
        );
    }

    [Fact]
    public void Every_rule_of_the_audit_says_why_what_to_do_and_where_it_comes_from() =>
        Assert.All(
            ProjectAudit.Rules(OneElement()),
            rule =>
            {
                Assert.NotEmpty(rule.Explanation);
                Assert.NotEmpty(rule.Remedy);
                Assert.NotEmpty(rule.Source);
            }
        );

    private static string Written(ColumnDefinition column) =>
        (column.IsRequired ? $"**`{column.Name}`**" : $"`{column.Name}`")
        + (column.IsKey ? " (key)" : "");

    private static List<(string Heading, string Text)> Sections(string page)
    {
        var text = File.ReadAllText(Path.Combine(Repository.Root, "docs", page))
            .ReplaceLineEndings("\n");
        return
        [
            .. SecondLevel()
                .Matches(text)
                .Select(match => (match.Groups["heading"].Value, match.Groups["text"].Value)),
        ];
    }

    private static Project OneElement()
    {
        var incoming = new IncomingRows(ElementTable.Definition);
        foreach (var column in ElementTable.Definition.Columns)
        {
            if (column == ElementTable.Code || column == ElementTable.Name)
            {
                ((TextColumnBuilder)incoming.Builders[column.Index]).Add("P");
            }
            else
            {
                incoming.Builders[column.Index].AddMissing();
            }
        }

        incoming.AddSource(0, 2);
        var elements = TableMerge
            .Into(
                Table.Empty(ElementTable.Definition),
                incoming,
                replace: false,
                new HashSet<int>()
            )
            .Table;
        return Project.Empty.With([elements]);
    }

    [GeneratedRegex(
        @"^## (?<heading>\S+)\n(?<text>.*?)(?=^#{1,2} |\z)",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture
    )]
    private static partial Regex SecondLevel();

    [GeneratedRegex(
        @"^\| (?<column>(\*\*)?`[^`]+`(\*\*)?( \(key\))?) \|",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture
    )]
    private static partial Regex ColumnCell();
}
