using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>What one command has changed: the rows as they were and as it left them.</summary>
internal sealed record EditStep(
    string Person,
    DateTimeOffset At,
    string Words,
    long Revision,
    IReadOnlyList<StepTable> Tables,
    int RowCount
)
{
    /// <summary>Commands that change more rows than this are not kept for taking back.</summary>
    public const int MostRows = 250_000;

    public static EditStep Of(
        Project before,
        Project after,
        IReadOnlyList<TableChange> changes,
        string person,
        string words,
        DateTimeOffset at
    )
    {
        var rows = changes.Sum(change => change.Count);
        return new EditStep(
            person,
            at,
            words,
            after.Revision,
            rows > MostRows
                ? []
                :
                [
                    .. changes.Select(change => new StepTable(
                        Picked(before[change.Definition], change.Removed.Concat(change.Updated)),
                        Picked(after[change.Definition], change.Added.Concat(change.Updated))
                    )),
                ],
            rows
        );
    }

    /// <summary>All its rows are kept.</summary>
    public bool CanBeTakenBack => RowCount <= MostRows;

    private static StepRows Picked(Table table, IEnumerable<int> ids) =>
        new(table.InOrder([.. ids.Select(table.RowOf)]));
}

/// <param name="Before">Rows that were removed or changed, as they were.</param>
/// <param name="After">Rows that were added or changed, as they were left.</param>
internal sealed record StepTable(StepRows Before, StepRows After)
{
    public TableDefinition Definition => After.Table.Definition;
}

/// <summary>Some rows of a table.</summary>
internal sealed class StepRows
{
    private readonly Dictionary<int, int> rowOfId = [];

    public StepRows(Table table)
    {
        Table = table;
        for (var row = 0; row < table.Count; row++)
        {
            rowOfId[table.Ids[row]] = row;
        }
    }

    public Table Table { get; }

    /// <summary>The row that has an id, or −1.</summary>
    public int RowOf(int id) => rowOfId.GetValueOrDefault(id, -1);
}
