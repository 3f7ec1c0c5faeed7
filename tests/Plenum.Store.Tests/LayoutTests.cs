using Plenum.Core;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

/// <summary>The SQL of the file and the project's layout say the same.</summary>
public sealed class LayoutTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public LayoutTests() => Projects.New(folder.File()).Dispose();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_file_has_a_table_for_every_table_of_the_layout_and_two_of_its_own()
    {
        var expected = ProjectLayout
            .Tables.Select(table => table.Name)
            .Append("audit")
            .Append("plenum");
        Assert.Equal(
            expected.Order(StringComparer.Ordinal),
            Sql.Texts(
                folder.File(),
                "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"
            ),
            StringComparer.Ordinal
        );
    }

    [Fact]
    public void Every_column_of_the_layout_stands_under_its_name_and_type_and_nothing_else_does()
    {
        foreach (var table in StoreLayout.Tables)
        {
            List<string> expected = ["id INTEGER", "own_fields TEXT"];
            expected.AddRange(
                table
                    .Columns.SelectMany(column => column.Parts)
                    .Select(part => $"{part.Name} {part.Type}")
            );
            Assert.Equal(
                expected.Order(StringComparer.Ordinal),
                Sql.Texts(
                        folder.File(),
                        $"SELECT name || ' ' || type FROM pragma_table_info('{table.Definition.Name}')"
                    )
                    .Order(StringComparer.Ordinal)
            );
        }
    }

    [Fact]
    public void Names_within_a_table_are_unique() =>
        Assert.All(
            StoreLayout.Tables,
            table =>
                Assert.Equal(
                    table.Names.Count,
                    table.Names.Distinct(StringComparer.OrdinalIgnoreCase).Count()
                )
        );

    [Fact]
    public void Every_reference_of_the_layout_names_its_table_in_SQL_and_nothing_else_does()
    {
        foreach (var table in StoreLayout.Tables)
        {
            Assert.Equal(
                table
                    .Columns.SelectMany(column => column.Parts)
                    .Where(part => part.References is not null)
                    .Select(part => $"{part.Name} -> {part.References}.id")
                    .Order(StringComparer.Ordinal),
                Sql.Texts(
                        folder.File(),
                        $"SELECT \"from\" || ' -> ' || \"table\" || '.' || \"to\" FROM pragma_foreign_key_list('{table.Definition.Name}')"
                    )
                    .Order(StringComparer.Ordinal)
            );
        }
    }

    [Fact]
    public void The_key_of_every_table_is_indexed_and_unique_where_all_of_it_is_required()
    {
        foreach (var table in StoreLayout.Tables)
        {
            var keys = table.Columns.Where(column => column.Definition.IsKey).ToList();
            var unique = keys.TrueForAll(column =>
                column.Definition.IsRequired && column.Parts.Count == 1
            );
            Assert.Equal(
                $"{(unique ? 1 : 0)}: {string.Join(", ", keys.SelectMany(column => column.Parts).Select(part => part.Name))}",
                Assert.Single(
                    Sql.Texts(
                        folder.File(),
                        $"""
                        SELECT i."unique" || ': ' || (SELECT group_concat(name, ', ') FROM pragma_index_info(i.name))
                        FROM pragma_index_list('{table.Definition.Name}') AS i WHERE i.name = '{table.Definition.Name}_key'
                        """
                    )
                )
            );
        }
    }

    [Fact]
    public void Columns_that_must_be_filled_are_NOT_NULL_and_no_others_are()
    {
        foreach (var table in StoreLayout.Tables)
        {
            Assert.Equal(
                table
                    .Columns.Where(column =>
                        column.Definition.IsRequired && column.Parts.Count == 1
                    )
                    .Select(column => column.Parts[0].Name)
                    .Order(StringComparer.Ordinal),
                Sql.Texts(
                        folder.File(),
                        $"SELECT name FROM pragma_table_info('{table.Definition.Name}') WHERE \"notnull\" = 1"
                    )
                    .Order(StringComparer.Ordinal)
            );
        }
    }

    [Fact]
    public void All_tables_are_strict() =>
        Assert.Empty(
            Sql.Texts(
                folder.File(),
                "SELECT name FROM pragma_table_list WHERE type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'"
            )
        );
}
