using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>Commands drawn at random for a project as it stands; some make no sense and are refused.</summary>
internal static class RandomCommands
{
    private static readonly ColumnDefinition[] Texts =
    [
        ElementTable.Name,
        ElementTable.Split,
        ElementTable.Description,
        ElementTable.Output,
        ElementTable.Acceptance,
        ElementTable.Code,
        ElementTable.Hazards,
    ];

    public static EditCommand Draw(Project project, Random random)
    {
        var tree = project.Tree;
        var ids = tree.Elements.Ids;
        var id = ids[random.Next(tree.Count)];
        var row = tree.Elements.RowOf(id);
        var other = ids[random.Next(tree.Count)];
        return random.Next(12) switch
        {
            0 or 1 => new AddElementCommand(id, 0, $"New part {random.Next(1000)}"),
            2 => AddAfterSister(tree, row, random),
            3 => new StepElementCommand(id, (Step)random.Next(4)),
            4 => new MoveElementCommand(id, other, 0),
            5 => new RemoveElementsCommand([id]),
            6 => new CopyElementCommand(id, other, 0),
            7 => new RepeatForSistersCommand(id),
            8 => new RenumberCommand(id),
            9 => Money(project, id, random),
            10 => Budget(project, random),
            _ => Write(project, Texts[random.Next(Texts.Length)], id, $"Words {random.Next(1000)}"),
        };
    }

    /// <summary>Writes a cell as somebody does who sees what is there.</summary>
    public static SetCellCommand Write(
        Project project,
        ColumnDefinition column,
        int id,
        string? text
    ) => new(new CellText(column.Table.Name, id, column.Name, text, Seen(project, column, id)));

    private static string? Seen(Project project, ColumnDefinition column, int id)
    {
        var table = project[column.Table];
        return new ProjectText(project).Of(table, table.RowOf(id), column);
    }

    private static AddElementCommand AddAfterSister(ElementTree tree, int row, Random random) =>
        tree.Parent[row] is var parent and >= 0
            ? new AddElementCommand(
                tree.Elements.Ids[parent],
                tree.Elements.Ids[row],
                $"New sister {random.Next(1000)}"
            )
            : new AddElementCommand(tree.Elements.Ids[row], 0, "First part");

    private static SetCellCommand Money(Project project, int id, Random random) =>
        Write(
            project,
            random.Next(2) == 0 ? ElementTable.Allotted : ElementTable.AllottedHours,
            id,
            random.Next(4) == 0 ? null : random.Next(100_000).ToString(CultureInfo.InvariantCulture)
        );

    private static EditCommand Budget(Project project, Random random)
    {
        var budget = project[BudgetTable.Definition];
        if (budget.Count == 0)
        {
            return new AddRowCommand("budget", []);
        }

        var id = budget.Ids[random.Next(budget.Count)];
        return random.Next(4) == 0
            ? new RemoveRowCommand("budget", id)
            : Write(
                project,
                BudgetTable.Amount,
                id,
                random.Next(1_000).ToString(CultureInfo.InvariantCulture)
            );
    }
}
