using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>Gives one part type to many elements at once.</summary>
/// <param name="Ids">The elements.</param>
/// <param name="PartType">Id of the part type; 0 takes the type away.</param>
public sealed record SetPartTypeCommand(IReadOnlyList<int> Ids, int PartType) : EditCommand
{
    public override string Tell(Project before)
    {
        var what = Elements.Say(before, Ids);
        return PartType == 0
            ? $"take the part type from {what}"
            : $"{what}: {Cells.KeyOf(before, PartTypeTable.Definition, PartType)}";
    }

    protected internal override void Apply(EditDraft draft)
    {
        if (PartType != 0 && !draft.Has(PartTypeTable.Definition, PartType))
        {
            throw new EditException(
                "This part type is no longer there; somebody has removed it.",
                "a part type that is there"
            );
        }

        foreach (var id in Ids)
        {
            Elements.Need(draft, id);
            if (draft.Text(ElementTable.Activity, id) is { } activity)
            {
                throw new EditException([
                    new EditFault(
                        ElementTable.Definition.Name,
                        draft.Key(ElementTable.Definition, id),
                        ElementTable.PartType.Name,
                        null,
                        "a part, not a package that carries out an activity of one",
                        $"{draft.Breakdown.Say(id)} carries out the activity {activity} of a part and is no part itself."
                    ),
                ]);
            }

            if (PartType == 0)
            {
                draft.Set(ElementTable.PartType, id, null);
            }
            else
            {
                draft.SetReference(ElementTable.PartType, id, PartType);
            }
        }
    }
}

/// <summary>
/// Renames an activity of a work set; packages of parts of the type, reasons and the order within the set go with it.
/// </summary>
/// <param name="Id">Row of the activity in the table of work sets.</param>
/// <param name="Name">Its new name.</param>
public sealed record RenameActivityCommand(int Id, string Name) : EditCommand
{
    public override string Tell(Project before) =>
        $"rename the activity {Cells.KeyOf(before, WorkSetTable.Definition, Id)} to {Name.Trim()}";

    protected internal override void Apply(EditDraft draft)
    {
        WorkSetRows.Need(draft, Id);
        var table = draft[WorkSetTable.Definition];
        var old = table.Text(WorkSetTable.Activity, Id)!;
        var name = Name.Trim();
        var type = draft.Reference(WorkSetTable.PartType, Id);
        draft.Set(WorkSetTable.Activity, Id, name);
        foreach (var id in DraftRows.Of(draft, WorkSetTable.Definition).ToList())
        {
            if (
                draft.Reference(WorkSetTable.PartType, id) == type
                && SetActivities.Names(table.Text(WorkSetTable.After, id)) is var names
                && names.Contains(old, StringComparer.Ordinal)
            )
            {
                var renamed = names.Select(one => one == old ? name : one);
                draft.Set(WorkSetTable.After, id, string.Join(';', renamed));
            }
        }

        HashSet<int> parts =
        [
            .. DraftRows
                .Of(draft, ElementTable.Definition)
                .Where(id => draft.Reference(ElementTable.PartType, id) == type),
        ];
        foreach (var part in parts)
        {
            foreach (var element in draft.Breakdown.Subtree(part))
            {
                if (
                    draft.Text(ElementTable.Activity, element) == old
                    && WorkSetRows.PartOf(draft, element) == part
                )
                {
                    draft.Set(ElementTable.Activity, element, name);
                }
            }
        }

        foreach (var id in DraftRows.Of(draft, NotNeededTable.Definition).ToList())
        {
            if (
                draft.Text(NotNeededTable.Activity, id) == old
                && parts.Contains(draft.Reference(NotNeededTable.Element, id))
            )
            {
                draft.Set(NotNeededTable.Activity, id, name);
            }
        }
    }
}

/// <summary>Moves an activity of a work set up or down by one place.</summary>
public sealed record MoveActivityCommand(int Id, bool Up) : EditCommand
{
    public override string Tell(Project before) =>
        $"move the activity {Cells.KeyOf(before, WorkSetTable.Definition, Id)} {(Up ? "up" : "down")}";

    protected internal override void Apply(EditDraft draft)
    {
        WorkSetRows.Need(draft, Id);
        var set = new SetActivities(draft).Of(draft.Reference(WorkSetTable.PartType, Id)).ToList();
        var at = set.FindIndex(activity => activity.Id == Id);
        var to = Up ? at - 1 : at + 1;
        if (to < 0 || to >= set.Count)
        {
            throw new EditException(
                $"{set[at].Activity} is the {(Up ? "first" : "last")} activity of its work set already.",
                "a place in that direction"
            );
        }

        (set[at], set[to]) = (set[to], set[at]);
        for (var place = 0; place < set.Count; place++)
        {
            if (draft[WorkSetTable.Definition].Int(WorkSetTable.Order, set[place].Id) != place + 1)
            {
                draft[WorkSetTable.Definition].Set(WorkSetTable.Order, set[place].Id, place + 1);
            }
        }
    }
}

/// <summary>Adds an activity at the end of a work set.</summary>
/// <param name="PartType">Id of the part type.</param>
/// <param name="Activity">The activity.</param>
/// <param name="Facet">Its facet; null for none.</param>
public sealed record AddActivityCommand(int PartType, string Activity, string? Facet) : EditCommand
{
    public override string Tell(Project before) =>
        $"add the activity {Activity.Trim()} to {Cells.KeyOf(before, PartTypeTable.Definition, PartType)}";

    protected internal override void Apply(EditDraft draft)
    {
        if (!draft.Has(PartTypeTable.Definition, PartType))
        {
            throw new EditException(
                "This part type is no longer there; somebody has removed it.",
                "a part type that is there"
            );
        }

        var table = draft[WorkSetTable.Definition];
        var last = new SetActivities(draft)
            .Of(PartType)
            .Select(activity => table.Int(WorkSetTable.Order, activity.Id))
            .Where(Cell.IsGiven)
            .DefaultIfEmpty(0)
            .Max();
        var id = draft.Add(WorkSetTable.Definition);
        draft.SetReference(WorkSetTable.PartType, id, PartType);
        draft.Set(WorkSetTable.Activity, id, Activity.Trim());
        draft.Set(WorkSetTable.Facet, id, Facet);
        table.Set(WorkSetTable.Order, id, last + 1);
    }
}

/// <summary>
/// Takes an activity out of a work set: parts of the type need it no longer. What is planned or ruled out stays as it
/// is; what came after it comes after what it came after.
/// </summary>
public sealed record RemoveActivityCommand(int Id) : EditCommand
{
    public override string Tell(Project before) =>
        $"take the activity {Cells.KeyOf(before, WorkSetTable.Definition, Id)} out of its work set";

    protected internal override void Apply(EditDraft draft)
    {
        WorkSetRows.Need(draft, Id);
        var set = new SetActivities(draft).Of(draft.Reference(WorkSetTable.PartType, Id));
        var gone = set.First(activity => activity.Id == Id);
        foreach (
            var other in set.Where(other =>
                other.After.Contains(gone.Activity, StringComparer.Ordinal)
            )
        )
        {
            var after = other
                .After.SelectMany(name => name == gone.Activity ? gone.After : [name])
                .Where(name => name != other.Activity)
                .Distinct(StringComparer.Ordinal);
            draft.Set(WorkSetTable.After, other.Id, string.Join(';', after));
        }

        draft.Remove(WorkSetTable.Definition, Id);
    }
}

internal static class WorkSetRows
{
    /// <exception cref="EditException">The activity is no longer there.</exception>
    public static void Need(EditDraft draft, int id)
    {
        if (!draft.Has(WorkSetTable.Definition, id))
        {
            throw new EditException(
                "This activity of the work set is no longer there; somebody has removed it.",
                "an activity that is there"
            );
        }
    }

    /// <summary>The nearest element on the way to the root, itself included, that has a part type; 0 if none has.</summary>
    public static int PartOf(EditDraft draft, int element)
    {
        for (var at = element; at != 0; at = draft.Breakdown.Parent(at))
        {
            if (draft.Reference(ElementTable.PartType, at) != 0)
            {
                return at;
            }
        }

        return 0;
    }
}
