using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>scope_revisions, scope, scope_wordings, scope_phrases, queries, trace.</summary>
internal static class ScopeTables
{
    public static void Write(TableFolder tables)
    {
        WriteRows(
            tables.Open("scope_revisions", "revision", "signed", "note"),
            ScopeText.Revisions,
            3
        );
        WriteItems(tables);
        WriteRows(
            tables.Open("scope_wordings", "item", "revision", "kind", "text"),
            ScopeText.Earlier,
            4
        );
        WriteRows(
            tables.Open(
                "queries",
                "query",
                "item",
                "text",
                "asked",
                "asked_by",
                "answer",
                "answered"
            ),
            ScopeText.Queries,
            7
        );
    }

    private static void WriteItems(TableFolder tables)
    {
        var scope = tables.Open(
            "scope",
            "item",
            "parent",
            "kind",
            "text",
            "clause",
            "revision",
            "withdrawn"
        );
        var phrases = tables.Open("scope_phrases", "item", "phrase");
        var trace = tables.Open("trace", "item", "element", "phrase");
        var came = RevisionOf(ScopeText.Earlier, 4)
            .Concat(RevisionOf(ScopeText.Added, 2))
            .ToDictionary(StringComparer.Ordinal);
        var gone = RevisionOf(ScopeText.Withdrawn, 2).ToDictionary(StringComparer.Ordinal);
        foreach (var line in PlantText.Lines(ScopeText.Items))
        {
            var cells = PlantText.Cells(line, 4);
            var item = cells[0];
            var dot = item.LastIndexOf('.');
            scope
                .Text(item)
                .Text(dot < 0 ? "" : item[..dot])
                .Text(cells[1])
                .Text(cells[2])
                .Text(item)
                .Text(came.GetValueOrDefault(item, ""))
                .Text(gone.GetValueOrDefault(item, ""))
                .EndRow();
            foreach (var answer in cells[3].Split(';', StringSplitOptions.RemoveEmptyEntries))
            {
                var colon = answer.IndexOf(':', StringComparison.Ordinal);
                var element = colon < 0 ? answer : answer[..colon];
                var phrase = colon < 0 ? "" : answer[(colon + 1)..];
                if (element == "?")
                {
                    phrases.Text(item).Text(phrase).EndRow();
                }
                else
                {
                    trace.Text(item).Text(element).Text(phrase).EndRow();
                }
            }
        }
    }

    private static IEnumerable<KeyValuePair<string, string>> RevisionOf(string text, int cells) =>
        PlantText
            .Lines(text)
            .Select(line => PlantText.Cells(line, cells))
            .Select(row => KeyValuePair.Create(row[0], row[1]));

    private static void WriteRows(TableWriter table, string text, int cells)
    {
        foreach (var line in PlantText.Lines(text))
        {
            foreach (var cell in PlantText.Cells(line, cells))
            {
                table.Text(cell);
            }

            table.EndRow();
        }
    }
}
