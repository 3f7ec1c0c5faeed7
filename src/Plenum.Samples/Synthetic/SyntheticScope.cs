using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Synthetic;

/// <summary>
/// Scope statement of a synthetic project: one deliverable for each of the first subsystems, a signed revision and a
/// draft, one query.
/// </summary>
internal static class SyntheticScope
{
    private const int MostDeliverables = 200;

    public static void Write(TableFolder tables, SyntheticTree tree)
    {
        var revisions = tables.Open("scope_revisions", "revision", "signed", "note");
        revisions.Text("1").Text("2025-12-01").Text("As contracted").EndRow();
        revisions.Text("2").Empty().Text("Ground and night work").EndRow();
        WriteItems(tables, tree);
        tables
            .Open("scope_wordings", "item", "revision", "kind", "text")
            .Text("3")
            .Text("2")
            .Text("assumption")
            .Text("Ground carries 180 kPa.")
            .EndRow();
        tables
            .Open("scope_phrases", "item", "phrase")
            .Text("1")
            .Text("complete and started")
            .EndRow();
        tables
            .Open("queries", "query", "item", "text", "asked", "asked_by", "answer", "answered")
            .Text("Q-1")
            .Text("4")
            .Text("Does the stop at night hold inside the halls?")
            .Text("2026-01-12")
            .Empty()
            .Text("No.")
            .Text("2026-01-19")
            .EndRow();
    }

    private static void WriteItems(TableFolder tables, SyntheticTree tree)
    {
        var scope = tables.Open("scope", "item", "parent", "kind", "text", "clause", "revision");
        var trace = tables.Open("trace", "item", "element", "phrase");
        Item("1", "", "requirement", "One plant, complete and started.", "");
        trace.Text("1").Text(SyntheticFrame.RootCode).Empty().EndRow();
        for (
            var subsystem = 0;
            subsystem < Math.Min(tree.Subsystems, MostDeliverables);
            subsystem++
        )
        {
            var item = string.Create(CultureInfo.InvariantCulture, $"1.{subsystem + 1}");
            var name = SyntheticBreakdown.SubsystemName(subsystem);
            Item(item, "1", "deliverable", $"{name}, ready for operation.", "");
            trace.Text(item).Text(tree.SubsystemCode(subsystem)).Empty().EndRow();
        }

        Item("2", "", "exclusion", "Operation after hand-over.", "");
        Item("3", "", "assumption", "Ground carries 150 kPa.", "2");
        Item("4", "", "constraint", "No work at night.", "2");
        Item("5", "", "acceptance", "Thirty days at rated output.", "");
        trace.Text("5").Text(SyntheticFrame.RootCode).Empty().EndRow();

        void Item(string item, string parent, string kind, string text, string revision) =>
            scope.Text(item).Text(parent).Text(kind).Text(text).Text(item).Text(revision).EndRow();
    }
}
