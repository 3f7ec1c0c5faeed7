using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;

namespace Plenum.Core.Tests.Network;

/// <summary>
/// Networks drawn from a seed: all link types with lags and leads, three calendars with holidays, milestones, every
/// condition, progress that may be out of sequence. What is drawn can be narrowed to the domain of a law.
/// </summary>
internal sealed class DrawnNetwork
{
    public const int Calendars = 3;

    public static readonly int Start = new DateOnly(2026, 3, 2).DayNumber;

    private static readonly string[] Weeks = ["1111100", "1111111", "1111110", "1010100"];

    private readonly Random random;
    private readonly Domain domain;
    private readonly int? statusDay;

    public DrawnNetwork(int seed, Domain? domain = null)
    {
        random = new Random(seed);
        this.domain = domain ?? new Domain();
        statusDay = this.domain.Progress && Chance(70) ? Start + Between(0, 40) : null;
    }

    public NetworkInput Input(int least = 1, int most = 40)
    {
        var count = Between(least, most);
        var facts = Enumerable.Range(0, count).Select(_ => Activity()).ToList();
        var order = Enumerable.Range(0, count).ToArray();
        if (Chance(70))
        {
            random.Shuffle(order);
        }

        List<(int From, int To, int Type)> ends = [];
        for (var link = Between(0, 2 * count); link > 0 && count > 1; link--)
        {
            var to = Between(1, count - 1);
            ends.Add((order[Math.Max(0, to - Between(1, 6))], order[to], LinkKind()));
        }

        ends = [.. ends.Distinct()]; // a double link is refused by an import

        return new NetworkInput
        {
            Codes = [.. Enumerable.Range(0, count).Select(number => $"A{number}")],
            Duration = Column(fact => fact.Duration),
            Calendar = Column(fact => fact.Calendar),
            Conditions = new ActivityConditions(
                Column(fact => fact.StartNoEarlier),
                Column(fact => fact.StartNoLater),
                Column(fact => fact.FinishNoEarlier),
                Column(fact => fact.FinishNoLater),
                Column(fact => fact.StartOn),
                Column(fact => fact.FinishOn),
                Column(fact => fact.RequiredBy)
            ),
            Started = Column(fact => fact.Started),
            Finished = Column(fact => fact.Finished),
            Remaining = Column(fact => fact.Remaining),
            From = [.. ends.Select(end => end.From)],
            To = [.. ends.Select(end => end.To)],
            Type = [.. ends.Select(end => end.Type)],
            Lag = [.. ends.Select(_ => Lag())],
            Calendars = [.. Enumerable.Range(0, Calendars).Select(_ => Calendar())],
            Start = Start,
            StatusDay = statusDay,
            LogicHolds = Chance(50),
        };

        int[] Column(Func<Core.Network.Live.ActivityFacts, int> of) => [.. facts.Select(of)];
    }

    public Core.Network.Live.ActivityFacts Activity()
    {
        var facts = new Core.Network.Live.ActivityFacts
        {
            Duration = domain.Milestones && Chance(20) ? 0 : Between(1, 9),
            Calendar = domain.OneCalendar ? 0 : Between(0, Calendars - 1),
            Started = Cell.NoInt,
            Finished = Cell.NoInt,
            Remaining = Cell.NoInt,
            StartNoEarlier = Day(domain.NoEarlier, 10),
            FinishNoEarlier = Day(domain.NoEarlier && domain.FinishNoEarlier, 5),
            StartNoLater = Day(domain.NoLater, 5),
            FinishNoLater = Day(domain.NoLater, 8),
            StartOn = Day(domain.On, 5),
            FinishOn = Day(domain.On, 4),
            RequiredBy = Day(domain.NoLater, 10),
        };
        return WithProgress(facts);
    }

    public Core.Network.Live.ActivityFacts WithProgress(Core.Network.Live.ActivityFacts facts)
    {
        facts = facts with { Started = Cell.NoInt, Finished = Cell.NoInt, Remaining = Cell.NoInt };
        if (statusDay is not { } day || !Chance(35))
        {
            return facts;
        }

        var started = Between(Start - 5, day);
        return Between(0, 2) switch
        {
            0 => facts with { Started = started },
            1 => facts with { Started = started, Remaining = Between(0, 8) },
            _ => facts with { Started = started, Finished = Between(started, day) },
        };
    }

    public WorkCalendar Calendar()
    {
        var week = domain.EveryDay ? "1111111" : Weeks[Between(0, Weeks.Length - 1)];
        Dictionary<DateOnly, bool> days = [];
        for (
            var number = domain.EveryDay || !domain.Holidays ? 0 : Between(0, 6);
            number > 0;
            number--
        )
        {
            days[DateOnly.FromDayNumber(Start + Between(-10, 90))] = Chance(25);
        }

        return new WorkCalendar([.. week.Select(mark => mark == '1')], days);
    }

    public int LinkKind() =>
        domain.FinishToStartOnly || Chance(60)
            ? LinkType.FinishToStart
            : Between(0, domain.ToStartOnly ? LinkType.StartToStart : LinkType.StartToFinish);

    public int Lag() =>
        !domain.Lags || Chance(50) ? 0
        : domain.Leads ? Between(-5, 7)
        : Between(0, 7);

    public int Day(bool isDrawn, int percent) =>
        isDrawn && Chance(percent) ? Start + Between(0, 60) : Cell.NoInt;

    public bool Chance(int percent) => random.Next(100) < percent;

    public void Shuffle(int[] values) => random.Shuffle(values);

    /// <summary>Both ends included.</summary>
    public int Between(int least, int most) => random.Next(least, most + 1);

    /// <summary>What is drawn at all.</summary>
    internal sealed record Domain
    {
        public bool Progress { get; init; } = true;

        public bool Milestones { get; init; } = true;

        public bool OneCalendar { get; init; }

        public bool EveryDay { get; init; }

        public bool NoEarlier { get; init; } = true;

        public bool NoLater { get; init; } = true;

        public bool On { get; init; } = true;

        public bool FinishToStartOnly { get; init; }

        /// <summary>Links lead to starts: finish to start and start to start.</summary>
        public bool ToStartOnly { get; init; }

        public bool FinishNoEarlier { get; init; } = true;

        public bool Holidays { get; init; } = true;

        public bool Lags { get; init; } = true;

        public bool Leads { get; init; } = true;

        /// <summary>Nothing but durations and finish-to-start links, every day worked.</summary>
        public static Domain Plain { get; } =
            new()
            {
                Progress = false,
                Milestones = false,
                OneCalendar = true,
                EveryDay = true,
                NoEarlier = false,
                NoLater = false,
                On = false,
                FinishToStartOnly = true,
                Lags = false,
            };
    }
}
