using System.Globalization;
using System.Text;
using Plenum.Core.Network;

namespace Plenum.Core.Tests.Network;

/// <summary>All that a computed network says, as text: equal for equal results.</summary>
internal static class Results
{
    public static string Of(NetworkDates dates)
    {
        var text = new StringBuilder();
        Say($"finish {dates.FinishInstant} critical {dates.CriticalFloat}");
        for (var activity = 0; activity < dates.Count; activity++)
        {
            var at = activity;
            Say(
                $"{at}: {Day(() => dates.EarlyStart(at))} {Day(() => dates.EarlyFinish(at))} "
                    + $"{Day(() => dates.LateStart(at))} {Day(() => dates.LateFinish(at))} "
                    + $"{dates.Remaining(at)} {dates.TotalFloat(at)} {dates.FreeFloat(at)} {dates.IndependentFloat(at)} "
                    + $"{dates.RequiredFloat(at)} {dates.IsCritical(at)} {dates.IsDriving(at)} "
                    + $"{dates.Drivers.CauseOfNegativeFloat(at)} {string.Join(',', dates.Drivers.DrivingLinksOf(at))}"
            );
        }

        Say($"{string.Join(' ', dates.Drivers.ChainToFinish())}");
        Say($"{string.Join(' ', dates.Drivers.LinksBrokenByDates())}");
        Say($"{string.Join(' ', dates.Drivers.LinksOutOfSequence())}");
        return text.ToString();

        void Say(string line) => text.AppendLine(line);
    }

    private static string Day(Func<DateOnly> of)
    {
        try
        {
            return of().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }
        catch (NetworkException wrong)
        {
            return wrong.Reason;
        }
    }
}
