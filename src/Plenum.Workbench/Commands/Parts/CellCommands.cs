using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>A cell that is to be planned.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Activity">The activity.</param>
/// <param name="Hours">
/// Hours for it; null for what its sisters have in the middle, else its share of what the part is allotted.
/// </param>
public sealed record CellPlan(int Part, string Activity, decimal? Hours = null);

/// <summary>
/// Plans cells: each becomes a package below its part, with technique, hazards, duration and links of the work set. A
/// cell that was ruled out loses its reason; one that is planned stays as it is.
/// </summary>
public sealed record PlanCellsCommand(IReadOnlyList<CellPlan> Plans) : EditCommand
{
    public override string Tell(Project before) =>
        $"plan {PartWords.Say(before, [.. Plans.Select(plan => new PartCell(plan.Part, plan.Activity))])}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        var usual = new CellHours(draft);
        foreach (var plan in Plans)
        {
            var cell = new PartCell(plan.Part, plan.Activity);
            var activity = work.Need(cell);
            if (work.PackagesOf(cell).Count > 0)
            {
                continue;
            }

            var (hours, money) = usual.Shares(plan.Part, [activity]);
            var sisters = plan.Hours is null ? usual.OfSisters(cell) : Cell.NoLong;
            work.Plan(
                cell,
                plan.Hours is { } given ? Hundredths(given, work, cell)
                    : Cell.IsGiven(sisters) ? sisters
                    : hours[0],
                money[0]
            );
        }
    }

    private static long Hundredths(decimal hours, PartWork work, PartCell cell) =>
        hours >= 0 && hours <= MostHours && decimal.Round(hours, 2) == hours
            ? (long)(hours * 100)
            : throw work.Refused(
                cell.Part,
                $"{cell.Activity} of {work.Say(cell.Part)}: {hours} hours found, hours from 0 with at most two decimals expected",
                "hours from 0 with at most two decimals"
            );

    private const decimal MostHours = 1_000_000_000;
}

/// <summary>Rules cells out: the part does not need the activity. A cell that is ruled out gets the new reason.</summary>
/// <param name="Cells">The cells.</param>
/// <param name="Reason">Why it is not needed, as it stands in the cell.</param>
public sealed record RuleOutCellsCommand(IReadOnlyList<PartCell> Cells, string Reason) : EditCommand
{
    public override string Tell(Project before) =>
        $"rule out {PartWords.Say(before, Cells)}: {Commands.Cells.Short(Reason)}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        foreach (var cell in Cells)
        {
            work.RuleOut(cell, Reason.Trim());
        }
    }
}

/// <summary>
/// Clears cells: reasons are taken out, and so are packages that hold no work of their own. A package with work in it
/// stays, and then nothing is done.
/// </summary>
public sealed record ClearCellsCommand(IReadOnlyList<PartCell> Cells) : EditCommand
{
    public override string Tell(Project before) => $"clear {PartWords.Say(before, Cells)}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        List<int> packages = [];
        foreach (var cell in Cells)
        {
            work.Need(cell);
            work.TakeReasonOut(cell);
            packages.AddRange(work.PackagesOf(cell).Where(id => id != cell.Part));
        }

        if (packages.Count > 0)
        {
            OwnWork.NeedNone(draft, packages);
            new RemoveElementsCommand(packages).Apply(draft);
        }
    }
}

/// <summary>One cell that is copied to another.</summary>
public sealed record CellCopy(PartCell From, PartCell To);

/// <summary>
/// Copies decisions from cells to cells, such as one block to another of the same shape: what is planned is planned
/// with the same hours, what is not needed gets the same reason. A missing cell decides nothing, and neither does one
/// that the other part does not need; what is planned already stays as it is.
/// </summary>
public sealed record CopyCellsCommand(IReadOnlyList<CellCopy> Copies) : EditCommand
{
    public override string Tell(Project before) =>
        Copies.Count == 0
            ? "copy no cells"
            : $"copy to {PartWords.Say(before, [.. Copies.Select(copy => copy.To)])}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        var usual = new CellHours(draft);

        // all are read before the first is written: blocks may overlap
        List<(PartCell To, long Hours, string? Reason)> decided = [];
        foreach (var (from, to) in Copies)
        {
            if (from == to || work.Find(from) is null || work.Find(to) is null)
            {
                continue;
            }

            if (work.PackagesOf(from) is { Count: > 0 } packages)
            {
                decided.Add((to, HoursOf(draft, packages), null));
            }
            else if (work.ReasonOf(from) is > 0 and var row)
            {
                decided.Add((to, Cell.NoLong, draft.Text(NotNeededTable.Reason, row)));
            }
        }

        if (decided.Count == 0)
        {
            throw new EditException(
                "There is nothing to copy: no cell of the block is decided that the other parts need too.",
                "a block with decided cells"
            );
        }

        foreach (var (to, hours, reason) in decided)
        {
            if (reason is not null)
            {
                work.RuleOut(to, reason);
            }
            else if (work.PackagesOf(to).Count == 0)
            {
                var (shared, money) = usual.Shares(to.Part, [work.Need(to)]);
                work.Plan(to, Cell.IsGiven(hours) ? hours : shared[0], money[0]);
            }
        }
    }

    private static long HoursOf(EditDraft draft, IReadOnlyList<int> packages)
    {
        var sum = 0L;
        foreach (var package in packages)
        {
            var row = draft.Before[ElementTable.Definition].RowOf(package);
            var budget = row < 0 ? 0 : draft.Before.HourTotals.Budget[row];
            var allotted = draft[ElementTable.Definition].Long(ElementTable.AllottedHours, package);
            sum +=
                budget != 0 ? budget
                : Cell.IsGiven(allotted) ? allotted
                : 0;
        }

        return sum == 0 ? Cell.NoLong : sum;
    }
}

/// <summary>
/// Applies the work set of each part: every missing cell becomes a package, with its share of the money and hours that
/// the part is allotted, exactly divided. Cells that are decided stay as they are, and so does the rest of what is
/// allotted: it is the part's gap.
/// </summary>
/// <param name="Parts">Ids of the parts.</param>
public sealed record ApplyWorkSetCommand(IReadOnlyList<int> Parts) : EditCommand
{
    public override string Tell(Project before) =>
        $"apply the work set to {Elements.Say(before, Parts)}";

    protected internal override void Apply(EditDraft draft)
    {
        var work = new PartWork(draft);
        var usual = new CellHours(draft);
        foreach (var part in Parts)
        {
            List<SetActivity> missing =
            [
                .. work.SetOf(part)
                    .Where(activity => work.IsMissing(new PartCell(part, activity.Activity))),
            ];
            var (hours, money) = usual.Shares(part, missing);
            for (var i = 0; i < missing.Count; i++)
            {
                work.Plan(new PartCell(part, missing[i].Activity), hours[i], money[i]);
            }
        }
    }
}

/// <summary>Cells in words.</summary>
internal static class PartWords
{
    /// <summary>Such as "Factory test of 03.2.04 High-pressure pump and 3 more".</summary>
    public static string Say(Project project, IReadOnlyList<PartCell> cells) =>
        cells.Count == 0
            ? "nothing"
            : $"{cells[0].Activity} of {Elements.Say(project, cells[0].Part)}"
                + (cells.Count == 1 ? "" : $" and {cells.Count - 1} more");
}
