using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Status;

namespace Plenum.Bench.Data;

/// <summary>Single edits of a project, of a kind that is asked for, at rows drawn from the seed.</summary>
internal sealed class Edits(ulong seed)
{
    /// <summary>Kinds in the order in which a stream of edits takes them, the frequent ones several times.</summary>
    public static readonly IReadOnlyList<string> Kinds =
    [
        "name",
        "dictionary",
        "allotted",
        "name",
        "person",
        "dictionary",
        "budget",
        "allotted",
        "name",
        "status",
        "person",
        "dictionary",
        "dates",
        "move",
        "link",
        "name",
        "allotted",
        "dictionary",
        "person",
        "status",
    ];

    private readonly Draw draw = new(seed);

    public (Project Next, TableChange[] Changes) Of(Project project, string kind) =>
        kind switch
        {
            "name" => Change(project, ElementTable.Name, Text),
            "dictionary" => Change(project, ElementTable.Output, Text),
            "person" => Change(
                project,
                ElementTable.Person,
                (column, row) => ((NumberColumnBuilder<int>)column)[row] = 1 + draw.Below(50)
            ),
            "allotted" => Change(project, ElementTable.Allotted, Amount),
            "budget" => Change(project, BudgetTable.Converted, Amount),
            "status" => Change(
                project,
                StatusTable.Percent,
                (column, row) => ((NumberColumnBuilder<int>)column)[row] = draw.Below(10_000)
            ),
            "dates" => Change(
                project,
                PackageTable.Finish,
                (column, row) => ((NumberColumnBuilder<int>)column)[row] += 10
            ),
            "link" => Change(
                project,
                LinkTable.Lag,
                (column, row) => ((NumberColumnBuilder<int>)column)[row] = draw.Below(5)
            ),
            _ => Move(project),
        };

    private void Text(ColumnBuilder column, int row) =>
        ((TextColumnBuilder)column)[row] = "Pumps and pipes, lot " + (char)('A' + draw.Below(26));

    private void Amount(ColumnBuilder column, int row) =>
        ((NumberColumnBuilder<long>)column)[row] = draw.Between(1_000, 100_000_000);

    private (Project, TableChange[]) Change(
        Project project,
        ColumnDefinition column,
        Action<ColumnBuilder, int> set
    )
    {
        var table = project[column.Table];
        var row = draw.Below(table.Count);
        var builder = table[column].ToBuilder(0);
        set(builder, row);
        return (
            project.With([table.With(column, builder.Build())]),
            [new TableChange(column.Table, [], [table.Ids[row]], [])]
        );
    }

    /// <summary>A package goes to the part of another package.</summary>
    private (Project, TableChange[]) Move(Project project)
    {
        var tree = project.Tree;
        var row = tree.PackageRows[draw.Below(tree.PackageCount)];
        var to = tree.Parent[tree.PackageRows[draw.Below(tree.PackageCount)]];
        var builder = tree.Elements[ElementTable.Parent].ToBuilder(0);
        ((NumberColumnBuilder<int>)builder)[row] = tree.Elements.Ids[to];
        var table = tree.Elements.With(ElementTable.Parent, builder.Build());
        var order = DepthFirstOrder.Of(
            ParentRules.ParentRows(table, ElementTable.Parent),
            table.Ints(ElementTable.Order),
            table.Codes
        );
        return (
            project.With([table.InOrder(order)]),
            [new TableChange(ElementTable.Definition, [], [tree.Elements.Ids[row]], [])]
        );
    }
}
