using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Status;

namespace Plenum.Store.KillTarget;

/// <summary>
/// A project of which the number of the revision says every cell, so that one look tells a whole revision from half
/// of one. From one revision to the next all rows change, some come and some go, over several tables and many pages.
/// Constructed here.
/// </summary>
public static class NumberedRevisions
{
    private const int LedgerRows = 1_500;

    public static Project At(long revision)
    {
        if (revision == 0)
        {
            return Project.Empty;
        }

        var number = checked((int)revision);
        var elements = 20 + (number % 37);
        var tables = Project.Empty.Tables.ToArray();
        Put(
            tables,
            PeriodTable.Definition,
            1,
            (column, _) => column == PeriodTable.Period ? "P1" : 739_000
        );
        Put(
            tables,
            ElementTable.Definition,
            elements,
            (column, row) =>
                column == ElementTable.Code ? Text($"1.{row:000}")
                : column == ElementTable.Parent ? (row == 0 ? null : 1)
                : column == ElementTable.Name ? Text($"element {row} at revision {number}")
                : null
        );
        Put(
            tables,
            BudgetTable.Definition,
            elements - 1,
            (column, row) =>
                column == BudgetTable.Package ? row + 2
                : column == BudgetTable.CostElement ? 0
                : column == BudgetTable.Amount || column == BudgetTable.Converted ? revision
                : null
        );
        // Every fifth revision books a long document, every other takes it out again.
        Put(
            tables,
            ActualTable.Definition,
            number % 5 == 0 ? LedgerRows : 1,
            (column, row) =>
                column == ActualTable.Document ? Text($"D{number}")
                : column == ActualTable.Line ? Text($"{row}")
                : column == ActualTable.Charge ? ActualTable.Charge.EncodeReference(0, 2)
                : column == ActualTable.Period ? 1
                : column == ActualTable.CostElement ? 1
                : column == ActualTable.Amount || column == ActualTable.Converted ? revision
                : null
        );
        return new Project(tables, revision);
    }

    public static IReadOnlyList<TableChange> Between(Project before, Project after) =>
        [
            .. after
                .Tables.Zip(before.Tables)
                .Where(pair =>
                    pair.First.Definition != PeriodTable.Definition || pair.Second.Count == 0
                )
                .Select(pair => new TableChange(
                    pair.First.Definition,
                    [.. pair.First.Ids.Except(pair.Second.Ids)],
                    [.. pair.First.Ids.Intersect(pair.Second.Ids)],
                    [.. pair.Second.Ids.Except(pair.First.Ids)]
                )),
        ];

    private static string Text(FormattableString text) =>
        text.ToString(CultureInfo.InvariantCulture);

    private static void Put(
        Table[] tables,
        TableDefinition definition,
        int rows,
        Func<ColumnDefinition, int, object?> cell
    )
    {
        var builders = definition.Columns.Select(column => column.NewBuilder()).ToArray();
        for (var row = 0; row < rows; row++)
        {
            foreach (var column in definition.Columns)
            {
                switch (cell(column, row))
                {
                    case string text:
                        ((TextColumnBuilder)builders[column.Index]).Add(text);
                        break;
                    case int number:
                        ((NumberColumnBuilder<int>)builders[column.Index]).Add(number);
                        break;
                    case long number:
                        ((NumberColumnBuilder<long>)builders[column.Index]).Add(number);
                        break;
                    default:
                        builders[column.Index].AddMissing();
                        break;
                }
            }
        }

        tables[ProjectLayout.IndexOf(definition)] = new Table(
            definition,
            [.. Enumerable.Range(1, rows)],
            [.. builders.Select(builder => builder.Build())]
        );
    }
}
