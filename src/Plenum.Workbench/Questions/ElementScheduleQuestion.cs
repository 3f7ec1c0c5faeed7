using Plenum.Core;
using Plenum.Core.Network;

namespace Plenum.Workbench.Questions;

/// <summary>When is an element done, with how much float, and where is it on the driving chain?</summary>
/// <param name="Element">Code of the element; all packages under it count.</param>
public sealed record ElementScheduleQuestion(string Element)
{
    /// <exception cref="QuestionException">There is no such element, or the network cannot be computed.</exception>
    public ElementScheduleAnswer Ask(Project project)
    {
        var element = ElementPosition.Of(project, Element);
        try
        {
            return Answer(project, element, project.Network);
        }
        catch (NetworkException wrong)
        {
            throw new QuestionException(wrong.Message);
        }
    }

    private static ElementScheduleAnswer Answer(
        Project project,
        int element,
        ProjectNetwork network
    )
    {
        var chain = network.Dates.Drivers.ChainToFinish();
        var stationOf = new Dictionary<int, int>();
        for (var station = 0; station < chain.Count; station++)
        {
            stationOf[chain[station].Activity] = station + 1;
        }

        List<ActivityRow> rows = [];
        for (var row = element; row < project.Tree.SubtreeEnd[element]; row++)
        {
            if (project.Tree.PackageOfRow[row] is not (var package and >= 0))
            {
                continue;
            }

            var (first, end) = network.ActivitiesOf(package);
            for (var activity = first; activity < end; activity++)
            {
                rows.Add(
                    new ActivityRow(
                        network,
                        activity,
                        stationOf.TryGetValue(activity, out var place) ? place : null
                    )
                );
            }
        }

        return new ElementScheduleAnswer(
            rows.Count,
            rows.Count(row => row.IsFinished),
            rows.Count == 0 ? null : rows.Min(row => row.EarlyStart),
            rows.Count == 0 ? null : rows.Max(row => row.EarlyFinish),
            rows.Count == 0 ? null : rows.Max(row => row.LateFinish),
            rows.Min(row => row.TotalFloat),
            rows.Count(row => row.IsCritical),
            [
                .. rows.Where(row => row.ChainPlace is not null)
                    .Select(row => row.ChainPlace!.Value)
                    .Order(),
            ],
            chain.Count
        );
    }
}

/// <summary>The answer to an <see cref="ElementScheduleQuestion"/>. Floats are working days of the activities' own calendars.</summary>
/// <param name="Activities">How many activities its packages have.</param>
/// <param name="Finished">How many of them are done.</param>
/// <param name="EarlyStart">The first early start; null without activities.</param>
/// <param name="EarlyFinish">The last early finish.</param>
/// <param name="LateFinish">The last late finish.</param>
/// <param name="LeastFloat">The least total float; null when all is done.</param>
/// <param name="Critical">How many activities are critical.</param>
/// <param name="Stations">Its places on the driving chain to the end, from 1.</param>
/// <param name="ChainLength">How many stations that chain has.</param>
public sealed record ElementScheduleAnswer(
    int Activities,
    int Finished,
    DateOnly? EarlyStart,
    DateOnly? EarlyFinish,
    DateOnly? LateFinish,
    int? LeastFloat,
    int Critical,
    IReadOnlyList<int> Stations,
    int ChainLength
);
