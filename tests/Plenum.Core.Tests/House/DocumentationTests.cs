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
                ColumnCell().Matches(section.Text).Select(match => match.Groups[1].Value)
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
                .Select(match => (match.Groups[1].Value, match.Groups[2].Value)),
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
        @"^## (\S+)\n(.*?)(?=^#{1,2} |\z)",
        RegexOptions.Multiline | RegexOptions.Singleline
    )]
    private static partial Regex SecondLevel();

    [GeneratedRegex(@"^\| ((?:\*\*)?`[^`]+`(?:\*\*)?(?: \(key\))?) \|", RegexOptions.Multiline)]
    private static partial Regex ColumnCell();
}
