using System.Globalization;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Network.Live;
using Plenum.Core.Network.Moves;

namespace Plenum.Workbench.Words;

/// <summary>A change of a network in a few words.</summary>
public static class ChangeSentence
{
    /// <summary>The word for its kind, as in answers to other programs.</summary>
    public static string Word(ChangeKind kind) =>
        kind switch
        {
            ChangeKind.Calendar => "calendar",
            ChangeKind.ActivityRemoved => "activity_removed",
            ChangeKind.LinkRemoved => "link_removed",
            ChangeKind.Activity => "activity",
            ChangeKind.Lag => "lag",
            ChangeKind.LinkAdded => "link_added",
            ChangeKind.ActivityAdded => "activity_added",
            ChangeKind.Progress => "progress",
            ChangeKind.StatusDate => "status_date",
            _ => "setting",
        };

    public static string Of(PlanChange change) =>
        change.Kind switch
        {
            ChangeKind.Calendar => change.Calendar is { } code
                ? $"days of calendar {code}"
                : "days of the project's calendar",
            ChangeKind.ActivityRemoved => $"{change.Activity} is no longer there",
            ChangeKind.ActivityAdded => $"{change.Activity} is new",
            ChangeKind.LinkRemoved =>
                $"link {change.Activity} {Link(change.LinkBefore!.Value)} {change.To} taken out",
            ChangeKind.LinkAdded =>
                $"link {change.Activity} {Link(change.LinkAfter!.Value)} {change.To} added",
            ChangeKind.Lag =>
                $"link {change.Activity} {Link(change.LinkBefore!.Value)} {change.To} is now {Link(change.LinkAfter!.Value)}",
            ChangeKind.Activity => $"{change.Activity}: {string.Join("; ", Plan(change))}",
            ChangeKind.Progress =>
                $"{change.Activity}: {string.Join("; ", Progress(change.Before!.Value, change.After!.Value))}",
            ChangeKind.StatusDate => "time that has passed without work done",
            _ => "start of the project, or the rule for work out of sequence",
        };

    private static IEnumerable<string> Plan(PlanChange change)
    {
        var (was, now) = (change.Before!.Value, change.After!.Value);
        if (was.Duration != now.Duration)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"duration {was.Duration} to {now.Duration}"
            );
        }

        if (change.CalendarBefore != change.Calendar)
        {
            yield return $"calendar {change.CalendarBefore ?? "Monday to Friday"} to {change.Calendar ?? "Monday to Friday"}";
        }

        foreach (
            var (column, before, after) in new[]
            {
                (ActivityTable.StartNoEarlier, was.StartNoEarlier, now.StartNoEarlier),
                (ActivityTable.StartNoLater, was.StartNoLater, now.StartNoLater),
                (ActivityTable.FinishNoEarlier, was.FinishNoEarlier, now.FinishNoEarlier),
                (ActivityTable.FinishNoLater, was.FinishNoLater, now.FinishNoLater),
                (ActivityTable.StartOn, was.StartOn, now.StartOn),
                (ActivityTable.FinishOn, was.FinishOn, now.FinishOn),
                (ActivityTable.RequiredBy, was.RequiredBy, now.RequiredBy),
            }
        )
        {
            if (before != after)
            {
                yield return $"{column.Name} {Day(before)} to {Day(after)}";
            }
        }
    }

    private static IEnumerable<string> Progress(ActivityFacts was, ActivityFacts now)
    {
        if (was.Started != now.Started)
        {
            yield return now.Started == Cell.NoInt
                ? "start withdrawn"
                : $"started {Day(now.Started)}";
        }

        if (was.Finished != now.Finished)
        {
            yield return now.Finished == Cell.NoInt
                ? "finish withdrawn"
                : $"finished {Day(now.Finished)}";
        }

        if (was.Remaining != now.Remaining && now.Finished == Cell.NoInt)
        {
            yield return now.Remaining == Cell.NoInt
                ? "remaining work not reported"
                : string.Create(CultureInfo.InvariantCulture, $"{now.Remaining} days remain");
        }
    }

    private static string Day(int day) =>
        day == Cell.NoInt ? "none" : Amounts.Day(DateOnly.FromDayNumber(day));

    private static string Link(LinkFacts link) =>
        link.Lag == 0
            ? LinkTable.Types.Format(link.Type)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{LinkTable.Types.Format(link.Type)} {(link.Lag > 0 ? "+" : "\u2212")}{Math.Abs(link.Lag)}"
            );
}
