using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>A project on which commands are done without a file; every value is checked as a whole.</summary>
internal static class Desk
{
    public static EditDesk Of(Project project) =>
        new(project, static (_, after, _, _, _, _) => Sound(after), TimeProvider.System);

    public static int Id(this EditDesk desk, string code)
    {
        var elements = desk.Current[ElementTable.Definition];
        var row = elements.RowOfCode(code);
        Assert.True(row >= 0, $"no element {code}");
        return elements.Ids[row];
    }

    public static string? Cell(this EditDesk desk, ColumnDefinition column, int id)
    {
        var table = desk.Current[column.Table];
        return new ProjectText(desk.Current).Of(table, table.RowOf(id), column);
    }

    public static string[] Outline(this EditDesk desk)
    {
        var tree = desk.Current.Tree;
        return
        [
            .. Enumerable
                .Range(0, tree.Count)
                .Select(row =>
                    new string(' ', 2 * (tree.Level[row] - 1))
                    + tree.Code(row)
                    + " "
                    + tree.Name(row)
                ),
        ];
    }

    /// <summary>All rules of the whole hold, not only those that a change was thought to concern.</summary>
    private static void Sound(Project project)
    {
        var faults = new Collected();
        ProjectRules.Check(project, _ => true, faults);
        Assert.Equal([], faults.Messages);
    }

    private sealed class Collected : IRowFaults
    {
        public List<string> Messages { get; } = [];

        public void Add(
            Table table,
            int row,
            ColumnDefinition? column,
            string expected,
            string message
        ) => Messages.Add(message);
    }
}
