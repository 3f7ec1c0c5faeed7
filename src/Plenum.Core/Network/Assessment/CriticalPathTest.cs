using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network.Assessment;

/// <summary>
/// Puts a great delay into the first incomplete critical task and looks whether the project's finish moves as much. If it
/// does not, something other than the network's logic holds the finish.
/// </summary>
internal static class CriticalPathTest
{
    /// <summary>
    /// Where work lies in several calendars, a delay in one is not exactly as many days in another: so much is let pass.
    /// </summary>
    private const decimal BetweenCalendars = 0.05m;

    public static AssessmentMetric Of(NetworkDates dates, int[] incomplete, int delay)
    {
        var task = incomplete
            .Where(dates.IsCritical)
            .OrderBy(activity => dates.WorkResumes(activity))
            .Cast<int?>()
            .FirstOrDefault();
        if (task is not { } first)
        {
            return new AssessmentMetric(12, "critical_path_test", 0, 0, null, 1, true, [], []);
        }

        var moved = Moved(dates, first, delay);
        return new AssessmentMetric(
            12,
            "critical_path_test",
            moved,
            delay,
            moved / (decimal)delay,
            1,
            true,
            [first],
            []
        )
        {
            Tolerance = dates.Input.Calendar.Distinct().Skip(1).Any() ? BetweenCalendars : 0,
        };
    }

    /// <summary>By how many working days of the task's calendar the finish moves.</summary>
    private static int Moved(NetworkDates dates, int task, int delay)
    {
        var input = dates.Input;
        int[] duration = [.. input.Duration];
        int[] remaining = [.. input.Remaining];
        if (dates.IsStarted(task) || remaining[task] != Cell.NoInt)
        {
            remaining[task] = dates.Remaining(task) + delay;
        }
        else
        {
            duration[task] += delay;
        }

        var after = NetworkDates.Of(input with { Duration = duration, Remaining = remaining });
        var calendar = input.Calendars[input.Calendar[task]];
        return calendar.NumberOfDay(after.FinishInstant - 1)
            - calendar.NumberOfDay(dates.FinishInstant - 1);
    }
}
