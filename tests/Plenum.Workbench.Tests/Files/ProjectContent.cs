using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Tests.Files;

/// <summary>A project as lines of text, to be compared: every cell of every table, whatever its ids and row order.</summary>
internal static class ProjectContent
{
    public static IReadOnlyList<string> Of(Project project)
    {
        var text = new ProjectText(project);
        List<string> lines = [];
        foreach (var table in project.Tables)
        {
            var ordered = table.Definition == Core.Breakdown.ElementTable.Definition;
            var rows = Enumerable.Range(0, table.Count).Select(row => Line(text, table, row));
            lines.AddRange(ordered ? rows : rows.Order(StringComparer.Ordinal));
        }

        return lines;
    }

    private static string Line(ProjectText text, Table table, int row) =>
        table.Definition.Name
        + ": "
        + string.Join(
            " | ",
            table
                .Definition.Columns.Select(column => $"{column.Name}={text.Of(table, row, column)}")
                .Concat(
                    table
                        .OwnFields.Where(field => field.Value.Values[row] is not null)
                        .OrderBy(field => field.Key, StringComparer.Ordinal)
                        .Select(field => $"{field.Key}={field.Value.Values[row]}")
                )
        );
}
