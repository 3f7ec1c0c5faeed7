using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>scope, trace.</summary>
internal static class ScopeTables
{
    public static void Write(TableFolder tables)
    {
        var scope = tables.Open("scope", "item", "parent", "kind", "text", "clause");
        var trace = tables.Open("trace", "item", "element", "phrase");
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
                .EndRow();
            foreach (var answer in cells[3].Split(';', StringSplitOptions.RemoveEmptyEntries))
            {
                var colon = answer.IndexOf(':', StringComparison.Ordinal);
                var element = colon < 0 ? answer : answer[..colon];
                trace
                    .Text(item)
                    .Text(element)
                    .Text(colon < 0 ? "" : answer[(colon + 1)..])
                    .EndRow();
            }
        }
    }
}
