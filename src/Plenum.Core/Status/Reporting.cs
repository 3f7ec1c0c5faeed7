using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>How far the report of a package has come in a period.</summary>
public enum ReportState
{
    /// <summary>A row was given.</summary>
    Reported,

    /// <summary>None was given yet.</summary>
    Due,

    /// <summary>None was given, nor in the period before; or a planned date has passed and nothing was said since.</summary>
    Late,

    /// <summary>The package was not open in the period, or it needs no report.</summary>
    NothingDue,
}

/// <summary>
/// Whose report is in. A package is open in a period if it has started or was due to start by the period's end, and no
/// finish was reported for an earlier period. Level of effort and apportioned effort earn without a report, so none of
/// theirs is ever due. Source: own definition.
/// </summary>
public static class Reporting
{
    /// <param name="baseline">The packages.</param>
    /// <param name="status">What was reported.</param>
    /// <param name="periods">The reporting periods.</param>
    /// <param name="reports">Last reports up to the period.</param>
    /// <param name="package">The package.</param>
    /// <param name="period">The period; −1 before the first, when nothing is due.</param>
    public static ReportState Of(
        PackageBaseline baseline,
        PackageStatus status,
        PeriodTimeline periods,
        LastReports reports,
        int package,
        int period
    )
    {
        if (!IsOpenIn(baseline, status, periods, package, period))
        {
            return ReportState.NothingDue;
        }

        var last = reports[package];
        if (last == period)
        {
            return ReportState.Reported;
        }

        if (
            baseline.Technique[package]
            is TechniqueCodec.LevelOfEffort
                or TechniqueCodec.Apportioned
        )
        {
            return ReportState.NothingDue;
        }

        var isSilentForTwo =
            last < period - 1 && IsOpenIn(baseline, status, periods, package, period - 1);
        var start =
            status.StartedAt(package, period) == Cell.NoInt ? baseline.Start[package] : Cell.NoInt;
        return
            isSilentForTwo
            || HasPassedUnsaid(periods, start, last, period)
            || HasPassedUnsaid(periods, baseline.Finish[package], last, period)
            ? ReportState.Late
            : ReportState.Due;
    }

    /// <summary>Started or due to start by the period's end, and not finished at the end of the period before.</summary>
    public static bool IsOpenIn(
        PackageBaseline baseline,
        PackageStatus status,
        PeriodTimeline periods,
        int package,
        int period
    ) =>
        period >= 0
        && status.FinishedAt(package, period - 1) == Cell.NoInt
        && OpenPackages.StartDay(baseline, status, package, period) is var start
        && start != Cell.NoInt
        && start <= periods.End(period).DayNumber;

    /// <summary>A planned day lies on or before the period's end, and no row was given for its period or later.</summary>
    private static bool HasPassedUnsaid(PeriodTimeline periods, int day, int last, int period) =>
        day != Cell.NoInt
        && day <= periods.End(period).DayNumber
        && last < periods.FirstEndingFrom(DateOnly.FromDayNumber(day));
}
