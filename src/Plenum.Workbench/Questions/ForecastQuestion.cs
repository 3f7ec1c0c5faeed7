using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Forecast;
using Plenum.Core.Foundation;
using Plenum.Core.Network;

namespace Plenum.Workbench.Questions;

/// <summary>Where will it end: every method, and how each has moved.</summary>
public sealed record ForecastQuestion(DateOnly? At = null, string? Under = null)
{
    public ForecastAnswer Ask(Project project)
    {
        var under = ElementPosition.Of(project, Under);
        var cut = project.CutsUnder(under).Whole();
        var last = At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
        long[] planned = [];
        long[] earned = [];
        CutSeries.Walk(
            project.TimePhased,
            cut,
            (row, plannedChanges, earnedChanges) =>
            {
                if (row < 0)
                {
                    planned = plannedChanges.ToArray();
                    earned = earnedChanges.ToArray();
                }
            }
        );
        var name = under < 0 ? project.Settings.Name : project.Tree.Name(under);
        List<ForecastPoint> history = [];
        for (var period = 0; period <= last; period++)
        {
            history.Add(
                new ForecastPoint(
                    project.Periods.Codes[period],
                    project.Periods.End(period),
                    RowAt(project, cut, period, planned, earned, name)
                )
            );
        }

        return new ForecastAnswer(
            last < 0 ? null : project.Periods.End(last),
            Under,
            project.Revision,
            project.Settings.Currency,
            RowAt(project, cut, last, planned, earned, name),
            history,
            NetworkFinish(project, under, last)
        );
    }

    /// <summary>
    /// The latest early finish in the network, of the whole project or of what lies under an element; null where the network
    /// cannot be computed or has nothing there.
    /// </summary>
    private DateOnly? NetworkFinish(Project project, int under, int period)
    {
        try
        {
            var network = At is null
                ? project.Network
                : ProjectNetwork.At(project, period < 0 ? null : project.Periods.End(period));
            return LatestFinish(project, network, under);
        }
        catch (NetworkException)
        {
            return null; // the audit says why
        }
    }

    private static DateOnly? LatestFinish(Project project, ProjectNetwork network, int under)
    {
        if (under < 0)
        {
            return network.Dates.Count == 0 ? null : network.Dates.Finish;
        }

        DateOnly? latest = null;
        for (var row = under; row < project.Tree.SubtreeEnd[under]; row++)
        {
            if (project.Tree.PackageOfRow[row] is var package and >= 0)
            {
                var (first, end) = network.ActivitiesOf(package);
                for (var activity = first; activity < end; activity++)
                {
                    var finish = network.Dates.EarlyFinish(activity);
                    latest = latest > finish ? latest : finish;
                }
            }
        }

        return latest;
    }

    private static MeasureRow RowAt(
        Project project,
        Cut cut,
        int period,
        long[] planned,
        long[] earned,
        string name
    ) =>
        new(
            Cut.Total,
            name,
            0,
            CutMeasures.At(project.TimePhased, cut, period, false).Total,
            EarnedSchedule.At(planned, earned, period),
            project.Settings.Currency,
            project.Periods
        );
}

/// <summary>The forecasts as they stood at a period's end.</summary>
public sealed record ForecastPoint(string Period, DateOnly End, MeasureRow Row);

public sealed record ForecastAnswer(
    DateOnly? At,
    string? Under,
    long Revision,
    Currency Currency,
    MeasureRow Now,
    IReadOnlyList<ForecastPoint> History,
    DateOnly? NetworkFinish
);
