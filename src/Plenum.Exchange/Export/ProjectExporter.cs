using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Export;

/// <summary>Writes every table of a project that has rows, in the layouts in which they are read.</summary>
public static class ProjectExporter
{
    public static void Write(
        Project project,
        TablesWriter writer,
        Action<double, string>? progress = null,
        CancellationToken ct = default
    )
    {
        var text = new ProjectText(project);
        double total = Math.Max(1, project.Tables.Sum(table => (long)table.Count));
        var done = 0L;
        foreach (var table in project.Tables.Where(table => table.Count > 0))
        {
            progress?.Invoke(done / total, table.Definition.Name);
            WriteTable(text, table, writer, ct);
            done += table.Count;
        }

        writer.Finish();
        progress?.Invoke(1, "done");
    }

    private static void WriteTable(
        ProjectText text,
        Table table,
        TablesWriter writer,
        CancellationToken ct
    )
    {
        var columns = table.Definition.Columns.Where(column => !column.IsComputed).ToList();
        string[] ownFields = [.. table.OwnFields.Keys.Order(StringComparer.Ordinal)];
        writer.StartTable(
            table.Definition.Name,
            [.. columns.Select(column => column.Name), .. ownFields]
        );
        for (var row = 0; row < table.Count; row++)
        {
            if ((row & 0xFFF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            foreach (var column in columns)
            {
                WriteCell(text, table, row, column, writer);
            }

            foreach (var field in ownFields)
            {
                writer.Text(table.OwnFields[field].Values[row]);
            }

            writer.EndRow();
        }
    }

    private static void WriteCell(
        ProjectText text,
        Table table,
        int row,
        ColumnDefinition column,
        TablesWriter writer
    )
    {
        if (text.Number(table, row, column) is { } number)
        {
            writer.Number(number);
        }
        else if (ProjectText.Date(table, row, column) is { } date)
        {
            writer.Date(date);
        }
        else if (text.Word(table, row, column) is { } word)
        {
            writer.Text(word);
        }
        else
        {
            writer.Empty();
        }
    }
}
