using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Core.Network.Assessment;

namespace Plenum.Core.Network.Audit;

/// <summary>A network with what its rules need to know beside the dates.</summary>
public sealed record AuditedNetwork(
    NetworkDates Dates,
    AssessmentFacts Facts,
    AssessmentLimits Limits
)
{
    private OpenEnds? ends;
    private LinkCounts? links;

    public NetworkInput Input => Dates.Input;

    public OpenEnds Ends => ends ??= new OpenEnds(Dates, Facts);

    public LinkCounts Links => links ??= new LinkCounts(Dates.Input);

    /// <summary>Activities that are not finished and are neither milestones nor level of effort.</summary>
    public IEnumerable<int> OpenTasks =>
        ScheduleAssessment.TasksOf(Dates, Facts).Where(activity => !Dates.IsFinished(activity));

    public string Code(int activity) => Input.Codes[activity];

    /// <summary>The activity by its name, or by its code where it has none.</summary>
    public string Name(int activity) =>
        Facts.Name(activity) is { Length: > 0 } name ? name : Code(activity);

    /// <summary>A link as a reader writes it: A FS +3 B.</summary>
    public string Link(int link)
    {
        var lag = Input.Lag[link];
        var days =
            lag == 0
                ? ""
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $" {(lag > 0 ? "+" : "\u2212")}{Math.Abs(lag)}"
                );
        return $"{Code(Input.From[link])} {LinkTable.Types.Format(Input.Type[link])}{days} {Code(Input.To[link])}";
    }
}

/// <summary>A rule that reads the network; it finds nothing where there is none.</summary>
public abstract class NetworkRule(AuditedNetwork? network) : AuditRule
{
    public sealed override IEnumerable<Finding> Run() => network is null ? [] : Find(network);

    protected abstract IEnumerable<Finding> Find(AuditedNetwork of);

    protected static string Day(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    protected static string Day(int day) => Day(DateOnly.FromDayNumber(day));

    protected static string Days(int days) =>
        string.Create(CultureInfo.InvariantCulture, $"{days} working day{(days == 1 ? "" : "s")}");
}

/// <summary>There are activities or links, and the network cannot be computed.</summary>
public sealed class NetworkNotComputedRule(string code, string? why) : AuditRule
{
    public override string Name => "network_not_computed";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Without a network nobody knows what drives the finish, and none of the rules on it can be asked.";

    public override string Remedy => "Give what the message asks for.";

    public override string Source => "GAO-16-89G best practice 6 (a valid critical path)";

    public override IEnumerable<Finding> Run()
    {
        if (why is not null)
        {
            yield return Found(code, why);
        }
    }
}
