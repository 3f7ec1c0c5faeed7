using Plenum.Core.Foundation;

namespace Plenum.Core.Network.Audit;

/// <summary>A task that no link leads to.</summary>
public sealed class OpenStartRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "open_start";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A task without predecessor starts at the project's start or the status date, whatever happens before it.";

    public override string Remedy => "Link it to what it waits for.";

    public override string Source =>
        "GAO-16-89G best practice 2; 14-point schedule assessment, point 1";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .OpenTasks.Where(activity =>
                of.Ends.LacksPredecessor(activity) && !of.Dates.IsStarted(activity)
            )
            .Select(activity =>
                Found(of.Code(activity), $"{of.Name(activity)} waits for nothing.")
            );
}

/// <summary>A task from which no link leads.</summary>
public sealed class OpenFinishRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "open_finish";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A task without successor can slip to the project's end without anything moving: its float is no float.";

    public override string Remedy => "Link it to what waits for it.";

    public override string Source =>
        "GAO-16-89G best practice 2; 14-point schedule assessment, point 1";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .OpenTasks.Where(of.Ends.LacksSuccessor)
            .Select(activity =>
                Found(of.Code(activity), $"Nothing waits for {of.Name(activity)}.")
            );
}

/// <summary>A task of which only the finish is driven.</summary>
public sealed class DanglingStartRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "dangling_start";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Only links to its finish lead to the task, so nothing says when it can start; a longer duration would merely start it earlier.";

    public override string Remedy => "Add the link that drives its start.";

    public override string Source => "GAO-16-89G best practice 2 (dangling activities)";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .OpenTasks.Where(activity =>
                of.Links.HasDanglingStart(activity) && !of.Dates.IsStarted(activity)
            )
            .Select(activity =>
                Found(of.Code(activity), $"No link drives the start of {of.Name(activity)}.")
            );
}

/// <summary>A task of which only the start drives anything.</summary>
public sealed class DanglingFinishRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "dangling_finish";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Only links from its start lead away, so the task can last as long as it likes and nothing moves.";

    public override string Remedy => "Add the link to what waits for its finish.";

    public override string Source => "GAO-16-89G best practice 2 (dangling activities)";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .OpenTasks.Where(of.Links.HasDanglingFinish)
            .Select(activity =>
                Found(
                    of.Code(activity),
                    $"The finish of {of.Name(activity)} drives nothing, only its start does."
                )
            );
}

/// <summary>A link with a lead.</summary>
public sealed class LeadRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "link_with_lead";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A lead counts back from something that has not happened, and nobody can see when it is due.";

    public override string Remedy =>
        "Split the predecessor where the successor can begin, and link them without lead.";

    public override string Source =>
        "14-point schedule assessment, point 2; GAO-16-89G best practice 2";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var link = 0; link < of.Input.LinkCount; link++)
        {
            if (of.Input.Lag[link] < 0 && !of.Dates.IsFinished(of.Input.To[link]))
            {
                yield return Found(
                    of.Code(of.Input.To[link]),
                    $"{of.Link(link)} has a lead of {Days(-of.Input.Lag[link])}."
                );
            }
        }
    }
}

/// <summary>A link from a start to a finish.</summary>
public sealed class StartToFinishRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "start_to_finish_link";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A link by which the start of one activity lets another finish is seldom meant: often the two ends are mixed up.";

    public override string Remedy =>
        "Check the direction; most such links are meant finish to start.";

    public override string Source => "GAO-16-89G best practice 2";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var link = 0; link < of.Input.LinkCount; link++)
        {
            if (
                of.Input.Type[link] == LinkType.StartToFinish
                && !of.Dates.IsFinished(of.Input.To[link])
            )
            {
                yield return Found(
                    of.Code(of.Input.To[link]),
                    $"{of.Link(link)} lets {of.Name(of.Input.To[link])} finish by the start of {of.Name(of.Input.From[link])}."
                );
            }
        }
    }
}

/// <summary>A link that two other links say already.</summary>
public sealed class RedundantLinkRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "redundant_link";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Of three finish-to-start links A to B, B to C and A to C the last can never drive; it only hides the logic.";

    public override string Remedy => "Take the link out.";

    public override string Source => "GAO-16-89G best practice 2 (redundant logic)";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        var input = of.Input;
        var predecessors = new List<int>?[input.Count];
        for (var link = 0; link < input.LinkCount; link++)
        {
            // with a lag A to C may say more than the way through B
            if (input.Type[link] == LinkType.FinishToStart && input.Lag[link] == 0)
            {
                (predecessors[input.To[link]] ??= []).Add(input.From[link]);
            }
        }

        HashSet<int> own = [];
        HashSet<int> said = [];
        for (var to = 0; to < input.Count; to++)
        {
            if (predecessors[to] is not { Count: > 1 } direct || of.Dates.IsFinished(to))
            {
                continue;
            }

            own.Clear();
            said.Clear();
            own.UnionWith(direct);
            foreach (var between in direct)
            {
                foreach (var from in predecessors[between] ?? [])
                {
                    if (own.Contains(from) && said.Add(from))
                    {
                        yield return Found(
                            of.Code(to),
                            $"The link from {of.Code(from)} to {of.Code(to)} says no more than those through {of.Code(between)}."
                        );
                    }
                }
            }
        }
    }
}
