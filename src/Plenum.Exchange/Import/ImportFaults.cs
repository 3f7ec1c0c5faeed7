using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>Says where in the files a row of the project came from, for faults that rules find in the whole.</summary>
public sealed class ImportFaults(InputErrors errors, IReadOnlyList<string> files) : IRowFaults
{
    private readonly Dictionary<TableDefinition, (IncomingRows Rows, MergeSources Sources)> taken =
    [];

    /// <summary>The project that the rules look at, for saying a cell's value.</summary>
    public Project? Project { get; set; }

    public void Taken(TableDefinition table, IncomingRows rows, MergeSources sources) =>
        taken[table] = (rows, sources);

    /// <summary>File and row of a row of a table; its table's name alone where it was there before.</summary>
    public (string File, int? Row) PlaceOf(TableDefinition table, int id)
    {
        if (
            taken.TryGetValue(table, out var source)
            && source.Sources.Of(id) is var incoming and >= 0
        )
        {
            var (file, row) = source.Rows.SourceOf(incoming);
            return (files[file], row);
        }

        return (table.Name, null);
    }

    public void Add(Table table, int row, ColumnDefinition? column, string expected, string message)
    {
        var (file, fileRow) = PlaceOf(table.Definition, table.Ids[row]);
        var value =
            column is null || Project is null
                ? null
                : new ProjectText(Project).Of(table, row, column);
        var place = fileRow is null ? KeyOf(table, row) : "";
        errors.Add(file, fileRow, column?.Name, value, expected, Whole(message + place, expected));
    }

    /// <summary>The complaint with what would have been right, so that it says what to do.</summary>
    public static string Whole(string message, string expected) =>
        message.Contains(expected, StringComparison.Ordinal) ? message
        : message.EndsWith('?') ? $"{message} Expected: {expected}"
        : $"{message}. Expected: {expected}";

    /// <summary>Names a row that was in the project before and so has no place in a file.</summary>
    private string KeyOf(Table table, int row)
    {
        if (Project is null)
        {
            return "";
        }

        var text = new ProjectText(Project);
        var key = table
            .Definition.Keys.Select(column => text.Of(table, row, column))
            .Where(part => part is not null);
        return $" (row {string.Join(", ", key)} of the project)";
    }
}
