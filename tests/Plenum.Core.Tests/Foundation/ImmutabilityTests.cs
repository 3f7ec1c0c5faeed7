using CsCheck;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Tests.Foundation;

public class ImmutabilityTests
{
    private static readonly ColumnDefinition[] Editable =
    [
        ElementTable.Name,
        ElementTable.Description,
        ElementTable.Split,
    ];

    [Fact]
    public void An_edit_leaves_the_old_project_as_it_was_and_shares_the_untouched_columns() =>
        Gen.Select(
                Gen.Int[1, 40],
                Gen.Int[0, 39],
                Gen.Int[0, 2],
                Gen.String[Gen.Char.AlphaNumeric, 1, 6]
            )
            .Sample(
                (size, place, which, text) =>
                {
                    var before = Elements(size);
                    var column = Editable[which];
                    var snapshot = Texts(before);
                    var incoming = new IncomingRows(ElementTable.Definition);
                    AddRow(incoming, "E" + (place % size), column, text);

                    var result = TableMerge.Into(
                        before,
                        incoming,
                        replace: false,
                        new HashSet<int>()
                    );

                    Assert.Equal(snapshot, Texts(before));
                    Assert.Equal(text, result.Table.Texts(column)[place % size]);
                    foreach (
                        var other in ElementTable.Definition.Columns.Where(other => other != column)
                    )
                    {
                        Assert.Same(before[other], result.Table[other]);
                    }

                    var project = Project.Empty.With([before]);
                    var next = project.With([result.Table]);
                    Assert.Same(before, project[ElementTable.Definition]);
                    foreach (
                        var table in project.Tables.Where(table =>
                            table.Definition != ElementTable.Definition
                        )
                    )
                    {
                        Assert.Same(table, next[table.Definition]);
                    }
                }
            );

    [Fact]
    public void Rows_that_say_what_is_there_already_change_nothing()
    {
        var before = Elements(5);
        var incoming = new IncomingRows(ElementTable.Definition);
        AddRow(incoming, "E3", ElementTable.Name, "Part 3");
        var result = TableMerge.Into(before, incoming, replace: false, new HashSet<int>());
        Assert.Same(before, result.Table);
        Assert.Equal(0, result.Change.Count);
    }

    [Fact]
    public void Replacement_removes_what_is_not_given_and_keeps_the_ids_of_the_rest()
    {
        var before = Elements(5);
        var incoming = new IncomingRows(ElementTable.Definition);
        AddRow(incoming, "E3", ElementTable.Name, "Part 3");
        var result = TableMerge.Into(before, incoming, replace: true, new HashSet<int>());
        Assert.Equal([4], result.Table.Ids);
        Assert.Equal([1, 2, 3, 5], result.Change.Removed);
    }

    private static Table Elements(int size)
    {
        var incoming = new IncomingRows(ElementTable.Definition);
        for (var row = 0; row < size; row++)
        {
            AddRow(incoming, "E" + row, ElementTable.Name, "Part " + row);
        }

        return TableMerge
            .Into(
                Table.Empty(ElementTable.Definition),
                incoming,
                replace: false,
                new HashSet<int>()
            )
            .Table;
    }

    private static void AddRow(
        IncomingRows incoming,
        string code,
        ColumnDefinition column,
        string text
    )
    {
        foreach (var definition in ElementTable.Definition.Columns)
        {
            var builder = incoming.Builders[definition.Index];
            if (definition == ElementTable.Code)
            {
                ((TextColumnBuilder)builder).Add(code);
            }
            else if (definition == column)
            {
                ((TextColumnBuilder)builder).Add(text);
            }
            else
            {
                builder.AddMissing();
            }
        }

        incoming.AddSource(0, incoming.Count + 2);
    }

    private static string[] Texts(Table table) =>
        [
            .. ElementTable
                .Definition.Columns.Where(column => column.Storage == ColumnStorage.Text)
                .Select(column => string.Join('|', table.Texts(column).ToArray())),
        ];
}
