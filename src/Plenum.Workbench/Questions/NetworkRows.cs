using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;

namespace Plenum.Workbench.Questions;

/// <summary>One activity of a computed network. Floats are working days of its own calendar.</summary>
/// <param name="Network">The network.</param>
/// <param name="Index">The activity's index in it.</param>
/// <param name="ChainPlace">Its place on the driving chain that was asked for, from 1; null if it is not on it.</param>
public sealed record ActivityRow(ProjectNetwork Network, int Index, int? ChainPlace)
{
    public string Code => Network.Code(Index);

    public string Name => Network.Name(Index);

    /// <summary>Code of the package that it belongs to.</summary>
    public string Package => Network.PackageCode(Network.Package[Index]);

    public int Duration => Network.Input.Duration[Index];

    /// <summary>Working days still to be done.</summary>
    public int Remaining => Dates.Remaining(Index);

    public bool IsMilestone => Dates.IsMilestone(Index);

    public bool IsStarted => Dates.IsStarted(Index);

    public bool IsFinished => Dates.IsFinished(Index);

    public DateOnly EarlyStart => Dates.EarlyStart(Index);

    public DateOnly EarlyFinish => Dates.EarlyFinish(Index);

    public DateOnly LateStart => Dates.LateStart(Index);

    public DateOnly LateFinish => Dates.LateFinish(Index);

    /// <summary>First day of the work that is still to be done; null when it is finished.</summary>
    public DateOnly? WorkResumes => Dates.WorkResumes(Index);

    public int? TotalFloat => Dates.TotalFloat(Index);

    public int? FreeFloat => Dates.FreeFloat(Index);

    public int? InterferingFloat => Dates.InterferingFloat(Index);

    public int? IndependentFloat => Dates.IndependentFloat(Index);

    public bool IsCritical => Dates.IsCritical(Index);

    public bool IsDriving => Dates.IsDriving(Index);

    public DateOnly? RequiredBy =>
        Network.Input.Conditions.RequiredBy[Index] is var day and not Cell.NoInt
            ? DateOnly.FromDayNumber(day)
            : null;

    /// <summary>Working days from the early finish to the date by which it is required.</summary>
    public int? RequiredFloat => Dates.RequiredFloat(Index);

    /// <summary>What causes its negative float; null where it has none.</summary>
    public NegativeFloatCause? Cause =>
        Dates.Drivers.CauseOfNegativeFloat(Index) is var (activity, condition)
            ? new NegativeFloatCause(
                Network.Code(activity),
                condition,
                condition.DateOf(Network.Input.Conditions, activity)
            )
            : null;

    private NetworkDates Dates => Network.Dates;
}

/// <summary>The date condition that causes an activity's negative float.</summary>
/// <param name="Activity">The activity that has the condition.</param>
/// <param name="Condition">Which it is.</param>
/// <param name="Date">Its date.</param>
public sealed record NegativeFloatCause(string Activity, DateCondition Condition, DateOnly Date)
{
    /// <summary>The name of its column.</summary>
    public string Word => Condition.ColumnName();
}

/// <summary>One station of a driving chain.</summary>
public sealed record ChainRow(ProjectNetwork Network, Station Station)
{
    public ActivityRow Activity => new(Network, Station.Activity, null);

    /// <summary>What gives it its early dates.</summary>
    public Holder HeldBy => Station.HeldBy;

    /// <summary>The link to the next station; null at the last.</summary>
    public LinkRow? Leaves => Station.Leaves is { } link ? new LinkRow(Network, link, null) : null;

    /// <summary>How many other links drive it as well.</summary>
    public int OtherDrivers => Station.OtherDrivers;
}

/// <summary>A link of the network.</summary>
/// <param name="Network">The network.</param>
/// <param name="Link">Its index in it.</param>
/// <param name="WorkDays">By how many working days of the successor's calendar it is broken; null where that is not asked.</param>
public sealed record LinkRow(ProjectNetwork Network, int Link, int? WorkDays)
{
    public string From => Network.Code(Network.Input.From[Link]);

    public string To => Network.Code(Network.Input.To[Link]);

    /// <summary>FS, SS, FF or SF.</summary>
    public string Type => LinkTable.Types.Format(Network.Input.Type[Link]);

    public int Lag => Network.Input.Lag[Link];
}

/// <summary>A package as its activities make it.</summary>
/// <param name="Package">Code of the package.</param>
/// <param name="EarlyStart">The first of its activities' early starts.</param>
/// <param name="EarlyFinish">The last of their early finishes.</param>
/// <param name="LateStart">The first of their late starts.</param>
/// <param name="LateFinish">The last of their late finishes.</param>
/// <param name="TotalFloat">The least of their total floats; null when all are finished.</param>
/// <param name="FreeFloat">The free float of the activity that ends last; null when all are finished.</param>
/// <param name="IsCritical">One of them is critical.</param>
/// <param name="IsDriving">One of them drives the project's end.</param>
/// <param name="ChainPlace">The first place of one of them on the driving chain that was asked for.</param>
public sealed record PackageDates(
    string Package,
    DateOnly EarlyStart,
    DateOnly EarlyFinish,
    DateOnly LateStart,
    DateOnly LateFinish,
    int? TotalFloat,
    int? FreeFloat,
    bool IsCritical,
    bool IsDriving,
    int? ChainPlace
)
{
    /// <summary>The packages of rows that stand together by package, as those of an answer do.</summary>
    public static IEnumerable<PackageDates> Of(IEnumerable<ActivityRow> activities)
    {
        List<ActivityRow> own = [];
        foreach (var row in activities)
        {
            if (own.Count > 0 && own[0].Package != row.Package)
            {
                yield return Together(own);
                own.Clear();
            }

            own.Add(row);
        }

        if (own.Count > 0)
        {
            yield return Together(own);
        }
    }

    private static PackageDates Together(List<ActivityRow> own) =>
        new(
            own[0].Package,
            own.Min(row => row.EarlyStart),
            own.Max(row => row.EarlyFinish),
            own.Min(row => row.LateStart),
            own.Max(row => row.LateFinish),
            own.Min(row => row.TotalFloat),
            own.Where(row => !row.IsFinished).MaxBy(row => row.EarlyFinish)?.FreeFloat,
            own.Exists(row => row.IsCritical),
            own.Exists(row => row.IsDriving),
            own.Min(row => row.ChainPlace)
        );
}
