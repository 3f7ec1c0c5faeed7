using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// For each package the last period on or before a given one with a row about it: of its own status, of a milestone,
/// of a step of an item, or of one of its activities.
/// </summary>
public sealed class LastReports
{
    private readonly PackageBaseline baseline;
    private readonly PeriodTimeline periods;
    private readonly int period;
    private readonly int[] last;

    /// <param name="baseline">The packages.</param>
    /// <param name="periods">The reporting periods.</param>
    /// <param name="period">Index of the period up to which rows count; −1 for none.</param>
    public LastReports(PackageBaseline baseline, PeriodTimeline periods, int period)
    {
        this.baseline = baseline;
        this.periods = periods;
        this.period = period;
        last = new int[baseline.Count];
        last.AsSpan().Fill(-1);
    }

    /// <summary>Index of the last period with a row about the package; −1 if there is none.</summary>
    public int this[int package] => last[package];

    /// <summary>Counts the rows of a table that names packages.</summary>
    public LastReports With(Table table, ColumnDefinition package, ColumnDefinition periodColumn)
    {
        Note(baseline.OwnersOf(table, package), table.Ints(periodColumn));
        return this;
    }

    /// <summary>Counts the rows of a table that names activities, for the packages that these belong to.</summary>
    /// <param name="activities">The activities.</param>
    /// <param name="packageOfActivity">Their column of packages.</param>
    /// <param name="table">The table that names them.</param>
    /// <param name="activity">Its column of activities.</param>
    /// <param name="periodColumn">Its column of periods.</param>
    public LastReports WithActivities(
        Table activities,
        ColumnDefinition packageOfActivity,
        Table table,
        ColumnDefinition activity,
        ColumnDefinition periodColumn
    )
    {
        var packages = baseline.OwnersOf(activities, packageOfActivity);
        var ids = table.Ints(activity);
        var owners = new int[ids.Length];
        for (var row = 0; row < owners.Length; row++)
        {
            owners[row] = activities.RowOf(ids[row]) is var at and >= 0 ? packages[at] : -1;
        }

        Note(owners, table.Ints(periodColumn));
        return this;
    }

    private void Note(int[] owners, ReadOnlySpan<int> periodIds)
    {
        for (var row = 0; row < owners.Length; row++)
        {
            var at = periods.IndexOf(periodIds[row]);
            if (owners[row] >= 0 && at <= period)
            {
                last[owners[row]] = Math.Max(last[owners[row]], at);
            }
        }
    }
}
