using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Network;

namespace Plenum.Workbench.Questions;

/// <summary>When is it done, what drives it, and how much float is there?</summary>
/// <param name="To">The driving chain leads to this activity; null for the one that ends the project.</param>
/// <param name="Float">
/// Only activities within so many working days above the float of the critical ones; null for all.
/// </param>
public sealed record NetworkQuestion(string? To = null, int? Float = null)
{
    /// <exception cref="QuestionException">There is no such activity, or the network cannot be computed.</exception>
    public NetworkAnswer Ask(Project project)
    {
        try
        {
            return Answer(project, project.Network);
        }
        catch (NetworkException wrong)
        {
            throw new QuestionException(wrong.Message);
        }
    }

    private NetworkAnswer Answer(Project project, ProjectNetwork network)
    {
        var dates = network.Dates;
        var chain = To is null
            ? dates.Drivers.ChainToFinish()
            : dates.Drivers.ChainTo(ActivityOf(network, To));
        var place = new Dictionary<int, int>();
        for (var station = 0; station < chain.Count; station++)
        {
            place[chain[station].Activity] = station + 1;
        }

        List<ActivityRow> rows = [];
        var critical = 0;
        for (var activity = 0; activity < dates.Count; activity++)
        {
            critical += dates.IsCritical(activity) ? 1 : 0;
            if (Float is null || dates.IsNearCritical(activity, Float.Value))
            {
                rows.Add(
                    new ActivityRow(
                        network,
                        activity,
                        place.TryGetValue(activity, out var at) ? at : null
                    )
                );
            }
        }

        return new NetworkAnswer(
            this,
            project.Revision,
            project.Settings.StatusDate,
            project.Settings.LogicHolds,
            dates.Count == 0 ? null : dates.Finish,
            dates.CriticalFloat,
            critical,
            rows,
            [.. chain.Select(station => new ChainRow(network, station))],
            [
                .. dates
                    .Drivers.LinksBrokenByDates()
                    .Select(broken => new LinkRow(network, broken.Link, broken.WorkDays)),
            ],
            [.. dates.Drivers.LinksOutOfSequence().Select(link => new LinkRow(network, link, null))]
        );
    }

    private static int ActivityOf(ProjectNetwork network, string code)
    {
        var activity = network.ActivityOf(code);
        if (activity >= 0)
        {
            return activity;
        }

        var nearest = NearestWord.Of(code, network.Input.Codes);
        throw new QuestionException(
            $"No activity has the code \"{code}\"."
                + (nearest is null ? "" : $" Did you mean {nearest}?")
        );
    }
}

/// <summary>The answer to a <see cref="NetworkQuestion"/>.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Revision">Revision of the project that answered.</param>
/// <param name="StatusDate">The day up to which progress counts; null where none does.</param>
/// <param name="LogicHolds">Out-of-sequence work waits for its predecessors.</param>
/// <param name="Finish">The latest early finish; null without activities.</param>
/// <param name="CriticalFloat">Total float up to which an activity is critical; null if only finished work ends the project.</param>
/// <param name="CriticalCount">How many activities are critical.</param>
/// <param name="Activities">In the order of the packages, those that were asked for.</param>
/// <param name="Chain">The driving chain, station by station.</param>
/// <param name="BrokenLinks">Links that an on date breaks.</param>
/// <param name="OutOfSequence">Links that progress has not kept to.</param>
public sealed record NetworkAnswer(
    NetworkQuestion Question,
    long Revision,
    DateOnly? StatusDate,
    bool LogicHolds,
    DateOnly? Finish,
    int? CriticalFloat,
    int CriticalCount,
    IReadOnlyList<ActivityRow> Activities,
    IReadOnlyList<ChainRow> Chain,
    IReadOnlyList<LinkRow> BrokenLinks,
    IReadOnlyList<LinkRow> OutOfSequence
)
{
    /// <summary>The packages of the activities that were asked for, in their order.</summary>
    public IEnumerable<PackageDates> Packages => PackageDates.Of(Activities);
}
