using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>
/// A computed network: early and late dates, floats, what drives what. Immutable; may be asked from several threads.
/// Activities are meant by their index in the <see cref="NetworkInput"/>. Floats are working days of the activity's own
/// calendar; a finished activity has none.
/// </summary>
public sealed class NetworkDates
{
    private readonly NetworkModel model;
    private readonly Lazy<int[]> freeLimit;
    private readonly Lazy<bool[]> beginsThere;
    private readonly Lazy<NetworkDrivers> drivers;
    private readonly Lazy<int?> criticalFloat;

    internal NetworkDates(NetworkModel model)
    {
        this.model = model;
        freeLimit = new(() => NetworkFloats.FreeLimits(model));
        beginsThere = new(() => MilestoneDates.BeginThere(model));
        drivers = new(() => new NetworkDrivers(model, this));
        criticalFloat = new(FindCriticalFloat);
    }

    public NetworkInput Input => model.Input;

    /// <summary>Revision of the project from which it was computed; 0 where there is no project.</summary>
    public long Revision { get; init; }

    public int Count => model.Input.Count;

    /// <summary>What drives what: chains, links without slack, broken links, causes of negative float.</summary>
    public NetworkDrivers Drivers => drivers.Value;

    /// <summary>The day on which the project ends: the latest early finish.</summary>
    public DateOnly Finish =>
        Day(
            Enders.Any(activity => !IsDatedByBeginning(activity)) ? model.Finish - 1 : model.Finish
        );

    /// <summary>The same as an instant, see <see cref="WorkingTime"/>.</summary>
    public int FinishInstant => model.Finish;

    /// <summary>
    /// The total float up to which an activity is critical: that of the activity that ends the project, the greatest if
    /// several end it together; null if only finished work does.
    /// </summary>
    public int? CriticalFloat => criticalFloat.Value;

    /// <summary>The activities that end the project, in the order of the input.</summary>
    public IEnumerable<int> Enders
    {
        get
        {
            for (var activity = 0; activity < Count; activity++)
            {
                var rank = model.RankOf[activity];
                if (model.FinishInstant(rank, model.Early[rank]) == model.Finish)
                {
                    yield return activity;
                }
            }
        }
    }

    /// <summary>Computes a network.</summary>
    /// <param name="input">What it is computed from.</param>
    /// <param name="revision">Revision of the project that it is taken from.</param>
    /// <exception cref="NetworkException">The links form a ring, or work leads beyond its calendar.</exception>
    public static NetworkDates Of(NetworkInput input, long revision = 0)
    {
        var ready = NetworkModel.Of(input);
        NetworkPass.Run(ready);
        return new NetworkDates(ready) { Revision = revision };
    }

    /// <summary>The model, to be changed by whoever asks for it.</summary>
    internal NetworkModel CopyOfModel() => model.Copy();

    public bool IsStarted(int activity) => Has(activity, NetworkModel.Started);

    public bool IsFinished(int activity) => Has(activity, NetworkModel.Finished);

    /// <summary>True for an activity that takes no working day.</summary>
    public bool IsMilestone(int activity) => Input.Duration[activity] == 0;

    /// <summary>Working days still to be done.</summary>
    public int Remaining(int activity) => model.Work[model.RankOf[activity]];

    public DateOnly EarlyStart(int activity) => StartDate(activity, model.Early);

    public DateOnly EarlyFinish(int activity) => FinishDate(activity, model.Early);

    /// <summary>The early finish as an instant, see <see cref="WorkingTime"/>.</summary>
    public int EarlyFinishInstant(int activity)
    {
        var rank = model.RankOf[activity];
        return model.FinishInstant(rank, model.Early[rank]);
    }

    public DateOnly LateStart(int activity) => StartDate(activity, model.Late);

    public DateOnly LateFinish(int activity) => FinishDate(activity, model.Late);

    /// <summary>First day of the work that is still to be done; null for a finished activity.</summary>
    public DateOnly? WorkResumes(int activity)
    {
        var rank = model.RankOf[activity];
        return IsFinished(activity) ? null
            : Has(activity, NetworkModel.Point) ? PointDate(activity, model.Early[rank])
            : Day(model.TimeOf(rank).BeginOf(model.Early[rank]));
    }

    /// <summary>Late finish less early finish. Negative where a condition asks for more than can be done.</summary>
    public int? TotalFloat(int activity)
    {
        var rank = model.RankOf[activity];
        return IsFinished(activity)
            ? null
            : model.WorkDays(rank, model.Early[rank], model.Late[rank]);
    }

    /// <summary>
    /// By how much the activity can slip without moving any successor's early dates or the project's finish; not below 0.
    /// </summary>
    public int? FreeFloat(int activity)
    {
        var rank = model.RankOf[activity];
        return IsFinished(activity)
            ? null
            : Math.Max(0, model.WorkDays(rank, model.Early[rank], freeLimit.Value[rank]));
    }

    /// <summary>Total float less free float: what is taken from successors when it is used.</summary>
    public int? InterferingFloat(int activity) => TotalFloat(activity) - FreeFloat(activity);

    /// <summary>
    /// The float that is left when all predecessors end as late as they may and no successor moves; not below 0.
    /// </summary>
    public int? IndependentFloat(int activity)
    {
        var rank = model.RankOf[activity];
        return IsFinished(activity)
            ? null
            : Math.Max(
                0,
                model.WorkDays(
                    rank,
                    NetworkFloats.AfterLatePredecessors(model, rank),
                    freeLimit.Value[rank]
                )
            );
    }

    /// <summary>
    /// Working days from the early finish to the date by which it is required; negative when it comes too late, null where
    /// no date is required.
    /// </summary>
    public int? RequiredFloat(int activity)
    {
        var required = Input.Conditions.RequiredBy[activity];
        if (required == Cell.NoInt)
        {
            return null;
        }

        var rank = model.RankOf[activity];
        var time = model.TimeOf(rank);
        return time.PlaceOf(required + 1) - time.PlaceOf(EarlyFinish(activity).DayNumber + 1);
    }

    /// <summary>True if its total float is not greater than <see cref="CriticalFloat"/>.</summary>
    public bool IsCritical(int activity) => TotalFloat(activity) <= CriticalFloat;

    /// <summary>Critical, or within a band of so many working days above.</summary>
    public bool IsNearCritical(int activity, int band) =>
        TotalFloat(activity) <= CriticalFloat + band;

    /// <summary>True for an activity from which a chain of links without slack leads to the project's end.</summary>
    public bool IsDriving(int activity) => Drivers.IsDriving(activity);

    /// <summary>A milestone's instant is the end of its day, unless nothing that ends drives it.</summary>
    internal bool IsDatedByBeginning(int activity) =>
        Has(activity, NetworkModel.Point) && beginsThere.Value[model.RankOf[activity]];

    internal static DateOnly Day(int day) =>
        day >= 0 && day <= DateOnly.MaxValue.DayNumber
            ? DateOnly.FromDayNumber(day)
            : throw new NetworkException(
                "late dates lie before the beginning of all calendars, because a date condition asks for more than can be done"
            );

    private bool Has(int activity, byte state) =>
        (model.State[model.RankOf[activity]] & state) != 0;

    private DateOnly StartDate(int activity, int[] at)
    {
        var rank = model.RankOf[activity];
        return IsStarted(activity) ? Day(Input.Started[activity])
            : Has(activity, NetworkModel.Point) ? PointDate(activity, at[rank])
            : Day(model.TimeOf(rank).BeginOf(at[rank]));
    }

    private DateOnly FinishDate(int activity, int[] at)
    {
        var rank = model.RankOf[activity];
        return IsFinished(activity) ? Day(Input.Finished[activity])
            : Has(activity, NetworkModel.Point) ? PointDate(activity, at[rank])
            : Day(model.FinishInstant(rank, at[rank]) - 1);
    }

    private DateOnly PointDate(int activity, int instant) =>
        Day(IsDatedByBeginning(activity) ? instant : instant - 1);

    private int? FindCriticalFloat()
    {
        int? greatest = null;
        foreach (var activity in Enders)
        {
            var total = TotalFloat(activity);
            greatest = total is null || greatest > total ? greatest : total;
        }

        return greatest;
    }
}
