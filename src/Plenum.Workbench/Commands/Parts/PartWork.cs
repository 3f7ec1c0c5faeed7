using System.Globalization;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>A cell of the matrix of parts by activities.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Activity">The activity.</param>
public sealed record PartCell(int Part, string Activity);

/// <summary>
/// Parts and what is planned and ruled out for them, while a command works on them: plans an activity as a package
/// with what its work set says of it.
/// </summary>
internal sealed class PartWork
{
    private readonly EditDraft draft;
    private readonly SetActivities sets;
    private readonly SetLinks links;
    private readonly Dictionary<(int Part, string Activity), int> reasons = [];
    private readonly Dictionary<int, Dictionary<string, List<int>>> planned = [];

    public PartWork(EditDraft draft)
    {
        this.draft = draft;
        sets = new SetActivities(draft);
        links = new SetLinks(draft);
        var table = draft[NotNeededTable.Definition];
        foreach (var id in DraftRows.Of(draft, NotNeededTable.Definition))
        {
            reasons[
                (
                    draft.Reference(NotNeededTable.Element, id),
                    table.Text(NotNeededTable.Activity, id)!
                )
            ] = id;
        }
    }

    /// <summary>The activities that a part needs by its type, in order.</summary>
    /// <exception cref="EditException">It is no longer there, or has no type with a work set.</exception>
    public IReadOnlyList<SetActivity> SetOf(int part)
    {
        Elements.Need(draft, part);
        var type = draft.Reference(ElementTable.PartType, part);
        if (type == 0)
        {
            throw Refused(part, $"{Say(part)} has no part type.", "an element with a part type");
        }

        return sets.Of(type) is { Count: > 0 } set
            ? set
            : throw Refused(
                part,
                $"The part type {draft.CodeOf(PartTypeTable.Definition, type)} of {Say(part)} has no work set.",
                "a part type with a work set"
            );
    }

    /// <summary>The activity of a cell.</summary>
    /// <exception cref="EditException">The part's type needs no such activity.</exception>
    public SetActivity Need(PartCell cell) =>
        Find(cell)
        ?? throw Refused(
            cell.Part,
            $"{Say(cell.Part)} needs no activity \"{cell.Activity}\" by its part type.",
            "an activity of the part type's work set"
        );

    /// <summary>The activity of a cell; null if the part's type needs no such activity.</summary>
    public SetActivity? Find(PartCell cell) =>
        SetOf(cell.Part).FirstOrDefault(activity => activity.Activity == cell.Activity);

    /// <summary>Elements below a part, or the part itself, that name an activity, in order.</summary>
    public IReadOnlyList<int> PackagesOf(PartCell cell) =>
        Planned(cell.Part).GetValueOrDefault(cell.Activity) ?? [];

    /// <summary>Id of the row that rules the cell out; 0 if none does.</summary>
    public int ReasonOf(PartCell cell) => reasons.GetValueOrDefault((cell.Part, cell.Activity));

    public bool IsMissing(PartCell cell) => PackagesOf(cell).Count == 0 && ReasonOf(cell) == 0;

    /// <summary>Takes out the reason of a cell, if there is one.</summary>
    public void TakeReasonOut(PartCell cell)
    {
        if (reasons.Remove((cell.Part, cell.Activity), out var id))
        {
            draft.Remove(NotNeededTable.Definition, id);
        }
    }

    /// <summary>Rules a cell out.</summary>
    /// <exception cref="EditException">It is planned, or no reason is given.</exception>
    public void RuleOut(PartCell cell, string reason)
    {
        Need(cell);
        if (PackagesOf(cell) is [var package, ..])
        {
            throw Refused(
                cell.Part,
                $"{cell.Activity} of {Say(cell.Part)} is planned by {draft.CodeOf(ElementTable.Definition, package)}. "
                    + "Take the package out first.",
                "an activity that is not planned"
            );
        }

        if (reasons.TryGetValue((cell.Part, cell.Activity), out var id))
        {
            draft.Set(NotNeededTable.Reason, id, reason);
            return;
        }

        id = draft.Add(NotNeededTable.Definition);
        draft.SetReference(NotNeededTable.Element, id, cell.Part);
        draft.Set(NotNeededTable.Activity, id, cell.Activity);
        draft.Set(NotNeededTable.Reason, id, reason);
        reasons[(cell.Part, cell.Activity)] = id;
    }

    /// <summary>
    /// Plans a cell that is missing or ruled out: adds a package below the part, named for part and activity, with
    /// technique, hazards, duration and links of the work set.
    /// </summary>
    /// <param name="cell">The cell.</param>
    /// <param name="hours">Hours that it is allotted, in hundredths; <see cref="Core.Foundation.Tables.Cell.NoLong"/> for none.</param>
    /// <param name="money">Money that it is allotted, in minor units; <see cref="Core.Foundation.Tables.Cell.NoLong"/> for none.</param>
    /// <returns>Id of the package.</returns>
    public int Plan(PartCell cell, long hours, long money)
    {
        var activity = Need(cell);
        TakeReasonOut(cell);
        var part = cell.Part;
        var package = draft.Breakdown.Add(part, PlaceOf(part, activity), NameOf(part, activity));
        draft.Set(ElementTable.Activity, package, activity.Activity);
        draft.Set(ElementTable.Hazards, package, activity.Hazards);
        if (draft.Text(ElementTable.Split, part) is null)
        {
            draft.Set(ElementTable.Split, part, "phase");
        }

        if (Cell.IsGiven(hours))
        {
            draft.Set(ElementTable.AllottedHours, package, Text(hours / 100m));
        }

        if (Cell.IsGiven(money))
        {
            var currency = draft.Before.Settings.Currency;
            draft.Set(ElementTable.Allotted, package, Text(currency.ToMajorUnits(money)));
        }

        AddTechnique(package, activity);
        AddDuration(package, activity);
        Note(part, activity.Activity, package);
        links.Add(package, activity, SetOf(part), name => PackagesOf(new PartCell(part, name)));
        return package;
    }

    /// <summary>Forgets a package that was taken out of the draft.</summary>
    public void Forget(PartCell cell, int package) =>
        Planned(cell.Part).GetValueOrDefault(cell.Activity)?.Remove(package);

    public string Say(int element) => draft.Breakdown.Say(element);

    public EditException Refused(int part, string message, string expected) =>
        new([
            new EditFault(
                ElementTable.Definition.Name,
                draft.Key(ElementTable.Definition, part),
                null,
                null,
                expected,
                message
            ),
        ]);

    private static string Text(decimal value) =>
        Ratio.Normal(value).ToString(CultureInfo.InvariantCulture);

    private string NameOf(int part, SetActivity activity) =>
        $"{draft.Text(ElementTable.Name, part)}, {PartsSentence.Lower(activity.Activity)}";

    /// <summary>Before the first child that carries out a later activity of the set.</summary>
    private int PlaceOf(int part, SetActivity activity)
    {
        var later = SetOf(part)
            .SkipWhile(one => one.Id != activity.Id)
            .Select(one => one.Activity)
            .ToHashSet(StringComparer.Ordinal);
        var family = draft.Breakdown.Children(part);
        for (var place = 0; place < family.Count; place++)
        {
            if (
                draft.Text(ElementTable.Activity, family[place]) is { } named
                && later.Contains(named)
            )
            {
                return place;
            }
        }

        return family.Count;
    }

    private void AddTechnique(int package, SetActivity activity)
    {
        // apportioned effort needs a package to follow, which no work set can name
        if (activity.Technique is { } technique && technique != Apportioned)
        {
            var row = draft.Add(PackageTable.Definition);
            draft.SetReference(PackageTable.Package, row, package);
            draft.Set(PackageTable.Technique, row, technique);
        }
    }

    private static readonly string Apportioned = TechniqueCodec.Instance.Format(
        TechniqueCodec.Apportioned
    );

    private void AddDuration(int package, SetActivity activity)
    {
        if (!Cell.IsGiven(activity.Duration))
        {
            return;
        }

        var code = draft.CodeOf(ElementTable.Definition, package) + "-A";
        for (
            var letter = 'B';
            draft.IdOf(ActivityTable.Definition, code) != 0 && letter <= 'Z';
            letter++
        )
        {
            code = code[..^1] + letter;
        }

        var row = draft.Add(ActivityTable.Definition);
        draft.Set(ActivityTable.Activity, row, code);
        draft.SetReference(ActivityTable.Package, row, package);
        draft.Set(ActivityTable.Name, row, draft.Text(ElementTable.Name, package));
        draft.Set(
            ActivityTable.Duration,
            row,
            activity.Duration.ToString(CultureInfo.InvariantCulture)
        );
        links.Know(package, row);
    }

    private Dictionary<string, List<int>> Planned(int part)
    {
        if (planned.TryGetValue(part, out var known))
        {
            return known;
        }

        planned[part] = known = new(StringComparer.Ordinal);
        foreach (var element in draft.Breakdown.Subtree(part))
        {
            if (draft.Text(ElementTable.Activity, element) is { } activity)
            {
                Add(known, activity, element);
            }
        }

        return known;
    }

    /// <summary>A package that was added lies below all parts above it.</summary>
    private void Note(int part, string activity, int package)
    {
        for (var at = part; at != 0; at = draft.Breakdown.Parent(at))
        {
            if (planned.TryGetValue(at, out var known))
            {
                Add(known, activity, package);
            }
        }
    }

    private static void Add(Dictionary<string, List<int>> lists, string activity, int element)
    {
        if (!lists.TryGetValue(activity, out var list))
        {
            lists[activity] = list = [];
        }

        list.Add(element);
    }
}
