using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Status;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>
/// Links within a work set: a package starts after those that carry out what comes before it. Where an activity before
/// it is ruled out, what comes before that one counts.
/// </summary>
internal sealed class SetLinks
{
    private readonly EditDraft draft;
    private readonly Lazy<Dictionary<int, List<int>>> activitiesOf;
    private readonly Lazy<HashSet<int>> reported;
    private readonly HashSet<(int From, int To)> made = [];

    public SetLinks(EditDraft draft)
    {
        this.draft = draft;
        activitiesOf = new(FindActivities);
        reported = new(() =>
            [
                .. DraftRows
                    .Of(draft, StatusTable.Definition)
                    .Select(id => draft.Reference(StatusTable.Package, id)),
            ]
        );
    }

    /// <summary>A package has an activity of its own.</summary>
    public void Know(int package, int activity)
    {
        if (!activitiesOf.Value.TryGetValue(package, out var list))
        {
            activitiesOf.Value[package] = list = [];
        }

        if (!list.Contains(activity))
        {
            list.Add(activity);
        }
    }

    /// <summary>
    /// Links a new package with what comes before it, and with what comes after it where nothing was reported yet.
    /// </summary>
    /// <param name="package">The new package.</param>
    /// <param name="activity">The activity that it carries out.</param>
    /// <param name="set">The work set.</param>
    /// <param name="packagesOf">Packages of the part that carry out an activity.</param>
    public void Add(
        int package,
        SetActivity activity,
        IReadOnlyList<SetActivity> set,
        Func<string, IReadOnlyList<int>> packagesOf
    )
    {
        foreach (var before in Before(activity, set, packagesOf))
        {
            foreach (var other in packagesOf(before.Activity))
            {
                Link(other, package);
            }
        }

        foreach (var later in set)
        {
            if (
                later != activity
                && packagesOf(later.Activity) is { Count: > 0 } others
                && Before(later, set, packagesOf).Contains(activity)
            )
            {
                foreach (var other in others.Where(other => !reported.Value.Contains(other)))
                {
                    Link(package, other);
                }
            }
        }
    }

    /// <summary>The nearest activities before one that somebody carries out.</summary>
    private static HashSet<SetActivity> Before(
        SetActivity activity,
        IReadOnlyList<SetActivity> set,
        Func<string, IReadOnlyList<int>> packagesOf
    )
    {
        HashSet<SetActivity> found = [];
        HashSet<string> seen = new(StringComparer.Ordinal) { activity.Activity };
        var waiting = new Queue<string>(activity.After);
        while (waiting.TryDequeue(out var name))
        {
            if (!seen.Add(name) || set.FirstOrDefault(one => one.Activity == name) is not { } one)
            {
                continue;
            }

            if (packagesOf(name).Count > 0)
            {
                found.Add(one);
                continue;
            }

            foreach (var further in one.After)
            {
                waiting.Enqueue(further);
            }
        }

        return found;
    }

    private void Link(int from, int to)
    {
        if (from == to || !made.Add((from, to)))
        {
            return;
        }

        var row = draft.Add(LinkTable.Definition);
        SetEnd(row, LinkTable.From, from, last: true);
        SetEnd(row, LinkTable.To, to, last: false);
    }

    /// <summary>A package with activities is linked by the last of them, or by the first.</summary>
    private void SetEnd(int row, ColumnDefinition column, int package, bool last)
    {
        if (activitiesOf.Value.TryGetValue(package, out var list))
        {
            draft.SetReference(column, row, last ? list[^1] : list[0]);
        }
        else
        {
            draft[LinkTable.Definition].Set(column, row, column.EncodeReference(1, package));
        }
    }

    /// <summary>Activities of each package, in the order of the table, which is that of the work.</summary>
    private Dictionary<int, List<int>> FindActivities()
    {
        Dictionary<int, List<int>> found = [];
        foreach (var id in DraftRows.Of(draft, ActivityTable.Definition))
        {
            var package = draft.Reference(ActivityTable.Package, id);
            if (!found.TryGetValue(package, out var list))
            {
                found[package] = list = [];
            }

            list.Add(id);
        }

        return found;
    }
}
