using Plenum.Core.Baseline;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Core.Status;

/// <summary>
/// A package is open between its start and its finish, actual where reported, else baseline: started or due to start,
/// and not finished.
/// </summary>
public static class OpenPackages
{
    public static bool IsOpen(
        PackageBaseline baseline,
        PackageStatus status,
        PeriodTimeline periods,
        int package,
        int period
    ) =>
        period >= 0
        && status.FinishedAt(package, period) == Cell.NoInt
        && StartDay(baseline, status, package, period) is var start
        && start != Cell.NoInt
        && start <= periods.End(period).DayNumber;

    /// <summary>Actual start held at the period's end, else baseline start; <see cref="Cell.NoInt"/> without either.</summary>
    public static int StartDay(
        PackageBaseline baseline,
        PackageStatus status,
        int package,
        int period
    ) =>
        status.StartedAt(package, period) is var started && started != Cell.NoInt
            ? started
            : baseline.Start[package];
}
