using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network.Assessment;

namespace Plenum.Core.Network.Audit;

/// <summary>A condition that can take float away or hold dates against the logic.</summary>
public sealed class HardConditionRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "hard_condition";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An on date or a no-later-than date keeps the forecast from moving, or shows float that depends on nothing but that date.";

    public override string Remedy =>
        "Let the logic say when it happens, and write what was promised in required_by.";

    public override string Source =>
        "14-point schedule assessment, point 5; GAO-16-89G best practice 2 and App. V";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        var conditions = of.Input.Conditions;
        foreach (var activity in of.OpenTasks)
        {
            if (ScheduleAssessment.HasHardCondition(conditions, activity))
            {
                (ColumnDefinition Column, int Day)[] given =
                [
                    (ActivityTable.StartOn, conditions.StartOn[activity]),
                    (ActivityTable.FinishOn, conditions.FinishOn[activity]),
                    (ActivityTable.StartNoLater, conditions.StartNoLater[activity]),
                    (ActivityTable.FinishNoLater, conditions.FinishNoLater[activity]),
                ];
                var words = given
                    .Where(one => one.Day != Cell.NoInt)
                    .Select(one => $"{one.Column.Name} {Day(one.Day)}");
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} is held by {string.Join(" and ", words)}."
                );
            }
        }
    }
}

/// <summary>Less than no float.</summary>
public sealed class NegativeFloatRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "negative_float";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A date condition later on asks for more than the work before it can give: the plan cannot be kept as it stands.";

    public override string Remedy =>
        "Shorten the work, change its logic, or have the date moved; do not hide it by moving the condition.";

    public override string Source =>
        "14-point schedule assessment, point 7; GAO-16-89G best practice 7";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (of.Dates.Drivers.CauseOfNegativeFloat(activity) is var (holder, condition))
            {
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} has a total float of \u2212{Days(-of.Dates.TotalFloat(activity)!.Value)}, "
                        + $"because of {condition.ColumnName()} {Day(condition.DateOf(of.Input.Conditions, holder))} of {of.Code(holder)}."
                );
            }
        }
    }
}

/// <summary>A contract date that the forecast misses.</summary>
public sealed class RequiredDateRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "required_date_missed";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "By the network the activity ends after the date by which a contract requires it.";

    public override string Remedy =>
        "Look at the driving chain to it, and give the notice that the contract asks for.";

    public override string Source => "common practice";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            if (
                of.Input.Conditions.RequiredBy[activity] is var required and not Cell.NoInt
                && of.Dates.EarlyFinish(activity).DayNumber > required
            )
            {
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} is required by {Day(required)} and {(of.Dates.IsFinished(activity) ? "ended" : "will end")} on {Day(of.Dates.EarlyFinish(activity))}."
                );
            }
        }
    }
}

/// <summary>A contract date before the activity's own start condition.</summary>
public sealed class RequiredBeforeStartRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "required_before_start";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "The activity may not even start by the date by which it is required: one of the two dates is wrong.";

    public override string Remedy => "Correct the date that is wrong.";

    public override string Source => "own definition";

    protected override IEnumerable<Finding> Find(AuditedNetwork of)
    {
        for (var activity = 0; activity < of.Input.Count; activity++)
        {
            var conditions = of.Input.Conditions;
            var required = conditions.RequiredBy[activity];
            var start = Math.Max(conditions.StartOn[activity], conditions.StartNoEarlier[activity]);
            if (required != Cell.NoInt && required < start)
            {
                yield return Found(
                    of.Code(activity),
                    $"{of.Name(activity)} is required by {Day(required)} and may not start before {Day(start)}."
                );
            }
        }
    }
}

/// <summary>A link that an on date breaks.</summary>
public sealed class BrokenLinkRule(AuditedNetwork? network) : NetworkRule(network)
{
    public override string Name => "date_breaks_link";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An on date holds the activity although a predecessor will not be done: the network shows a date that cannot be.";

    public override string Remedy => "Take the on date out, or correct the link.";

    public override string Source => "GAO-16-89G App. V (hard conditions)";

    protected override IEnumerable<Finding> Find(AuditedNetwork of) =>
        of
            .Dates.Drivers.LinksBrokenByDates()
            .Select(broken =>
                Found(
                    of.Code(of.Input.To[broken.Link]),
                    $"The date of {of.Name(of.Input.To[broken.Link])} is {Days(broken.WorkDays)} earlier than {of.Link(broken.Link)} allows."
                )
            );
}
