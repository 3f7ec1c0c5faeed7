using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>An activity of a work set, as it stands in a draft.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Activity">The activity.</param>
/// <param name="Share">Usual share of the part's cost in per cent; <see cref="Cell.NoDecimal"/> for none.</param>
/// <param name="Duration">Usual duration in working days; <see cref="Cell.NoInt"/> for none.</param>
/// <param name="Technique">Usual technique; null for none.</param>
/// <param name="Hazards">Usual hazards; null for none.</param>
/// <param name="After">Activities of the set that come before it.</param>
internal sealed record SetActivity(
    int Id,
    string Activity,
    decimal Share,
    int Duration,
    string? Technique,
    string? Hazards,
    IReadOnlyList<string> After
);

/// <summary>The work sets as they stand in a draft, each in its order.</summary>
internal sealed class SetActivities
{
    private readonly Dictionary<int, List<SetActivity>> byType = [];

    public SetActivities(EditDraft draft)
    {
        var table = draft[WorkSetTable.Definition];
        foreach (
            var id in DraftRows
                .Of(draft, WorkSetTable.Definition)
                .OrderBy(id => table.Int(WorkSetTable.Order, id))
        )
        {
            var type = draft.Reference(WorkSetTable.PartType, id);
            if (!byType.TryGetValue(type, out var set))
            {
                byType[type] = set = [];
            }

            set.Add(
                new SetActivity(
                    id,
                    table.Text(WorkSetTable.Activity, id)!,
                    table.Decimal(WorkSetTable.Share, id),
                    table.Int(WorkSetTable.Duration, id),
                    draft.Text(WorkSetTable.Technique, id),
                    table.Text(WorkSetTable.Hazards, id),
                    Names(table.Text(WorkSetTable.After, id))
                )
            );
        }
    }

    /// <summary>The activities of a part type, in order; none for a type without a work set.</summary>
    public IReadOnlyList<SetActivity> Of(int partType) => byType.GetValueOrDefault(partType) ?? [];

    /// <summary>The names in a cell that separates them by semicolons.</summary>
    public static IReadOnlyList<string> Names(string? cell) =>
        (cell ?? "").Split(
            ';',
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
        );
}

/// <summary>The rows of a table as they stand in a draft.</summary>
internal static class DraftRows
{
    /// <summary>Ids of the rows, those that were added last.</summary>
    public static IEnumerable<int> Of(EditDraft draft, TableDefinition table)
    {
        var edit = draft[table];
        return edit.Before.Ids.Where(edit.Has).Concat(edit.Added);
    }
}
