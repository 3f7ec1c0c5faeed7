using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Standards;

/// <summary>Rows of one table of a standard breakdown, as text.</summary>
/// <param name="Table">The table's name.</param>
/// <param name="Columns">Names of its columns.</param>
/// <param name="Rows">Cells as they stand in files; null where empty.</param>
public sealed record StandardRows(
    string Table,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string?>> Rows
);

/// <summary>A standard breakdown as plain rows, so that a command can carry it.</summary>
/// <param name="Name">What it is called where something of it is left out.</param>
/// <param name="Tables">Its tables, each after those that it refers to.</param>
public sealed record StandardContent(string Name, IReadOnlyList<StandardRows> Tables)
{
    /// <summary>All that a standard breakdown may hold, see <see cref="ProjectStandard"/>; the rest is passed over.</summary>
    public static StandardContent Of(Project standard, string name)
    {
        var text = new ProjectText(standard);
        List<StandardRows> tables = [];
        foreach (var table in standard.Tables)
        {
            var columns = ProjectStandard.Columns(table.Definition);
            if (columns.Count == 0 || table.Count == 0)
            {
                continue;
            }

            tables.Add(
                new StandardRows(
                    table.Definition.Name,
                    [.. columns.Select(column => column.Name)],
                    [
                        .. Enumerable
                            .Range(0, table.Count)
                            .Select(row =>
                                (IReadOnlyList<string?>)
                                    [.. columns.Select(column => text.Of(table, row, column))]
                            ),
                    ]
                )
            );
        }

        return new StandardContent(name, tables);
    }

    internal StandardTable Table(TableDefinition definition) =>
        new(definition, Tables.FirstOrDefault(table => table.Table == definition.Name));

    /// <summary>How many elements it has.</summary>
    public int Elements => Table(ElementTable.Definition).Count;
}

/// <summary>A table of a standard breakdown, read by column.</summary>
internal sealed class StandardTable
{
    private readonly StandardRows? rows;

    public StandardTable(TableDefinition definition, StandardRows? rows)
    {
        this.rows = rows;
        Columns = rows is null
            ? []
            :
            [
                .. definition.Columns.Where(column =>
                    rows.Columns.Contains(column.Name, StringComparer.Ordinal)
                ),
            ];
    }

    public int Count => rows?.Rows.Count ?? 0;

    public IReadOnlyList<ColumnDefinition> Columns { get; }

    public string? Cell(int row, ColumnDefinition column)
    {
        for (var cell = 0; cell < rows!.Columns.Count; cell++)
        {
            if (rows.Columns[cell] == column.Name)
            {
                return rows.Rows[row][cell];
            }
        }

        return null;
    }
}
