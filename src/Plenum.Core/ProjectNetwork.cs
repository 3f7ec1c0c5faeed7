using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>
/// The network of a project at a status date: its activities in the order of the packages, and their dates. A package
/// without activities is one activity with the package's code; its duration is the working days of its baseline dates,
/// and 0 without such dates.
/// </summary>
public sealed class ProjectNetwork
{
    private readonly Project project;
    private readonly int[] firstOfPackage;

    private ProjectNetwork(Project project, NetworkInput input, Activities activities)
    {
        this.project = project;
        firstOfPackage = activities.FirstOfPackage;
        Package = activities.Package;
        Row = activities.Row;
        LinkRow = activities.LinkRow;
        Dates = NetworkDates.Of(input, project.Revision);
    }

    private ProjectNetwork(Project project, ProjectNetwork same)
    {
        this.project = project;
        firstOfPackage = same.firstOfPackage;
        Package = same.Package;
        Row = same.Row;
        LinkRow = same.LinkRow;
        Dates = same.Dates;
    }

    /// <summary>The same network of a project that differs in nothing it is computed from; names are the other's.</summary>
    internal ProjectNetwork Over(Project other) => new(other, this);

    public NetworkDates Dates { get; }

    public NetworkInput Input => Dates.Input;

    /// <summary>The package of each activity.</summary>
    public int[] Package { get; }

    /// <summary>The row of each activity in its table; −1 where a package is its own activity.</summary>
    public int[] Row { get; }

    /// <summary>The row of each link in its table.</summary>
    public int[] LinkRow { get; }

    public string Code(int activity) => Input.Codes[activity];

    public string Name(int activity) =>
        Row[activity] < 0
            ? project.Tree.Name(project.Tree.PackageRows[Package[activity]])
            : project[ActivityTable.Definition].Texts(ActivityTable.Name)[Row[activity]] ?? "";

    public string PackageCode(int package) => project.Baseline.Code(package);

    /// <summary>The activities of a package: the first, and the one after the last.</summary>
    public (int First, int End) ActivitiesOf(int package) =>
        (firstOfPackage[package], firstOfPackage[package + 1]);

    /// <summary>The activity of a code, of activities first and of packages then; −1 if there is none.</summary>
    public int ActivityOf(string code)
    {
        var activities = project[ActivityTable.Definition];
        if (activities.RowOfCode(code) is var row and >= 0)
        {
            return Array.IndexOf(Row, row);
        }

        var element = project.Tree.Elements.RowOfCode(code);
        var package = element < 0 ? -1 : project.Tree.PackageOfRow[element];
        return package >= 0 && Row[firstOfPackage[package]] < 0 ? firstOfPackage[package] : -1;
    }

    /// <summary>The network with the progress that is reported up to a day.</summary>
    /// <param name="project">The project.</param>
    /// <param name="statusDate">Progress counts up to here; null for none at all.</param>
    /// <exception cref="NetworkException">It has no start, its links form a ring, or work leads beyond its calendar.</exception>
    public static ProjectNetwork At(Project project, DateOnly? statusDate)
    {
        var activities = new Activities(project);
        return new ProjectNetwork(project, activities.Input(statusDate), activities);
    }

    /// <summary>Activities and links as numbered in the network, without its dates.</summary>
    internal static (
        IReadOnlyList<string> Codes,
        int[] Row,
        int[] From,
        int[] To,
        int[] LinkRow
    ) LinksOf(Project project)
    {
        var activities = new Activities(project);
        return (
            activities.Codes,
            activities.Row,
            activities.From,
            activities.To,
            activities.LinkRow
        );
    }

    /// <summary>The calendar of each row of the activities: its own, or the project's.</summary>
    internal static Func<int, WorkCalendar> CalendarsByRow(Project project)
    {
        var named = project[ActivityTable.Definition].Ints(ActivityTable.Calendar).ToArray();
        var calendars = project[CalendarTable.Definition];
        Dictionary<int, WorkCalendar> made = [];
        return row =>
        {
            if (named[row] == Cell.NoInt)
            {
                return project.Calendar;
            }

            if (!made.TryGetValue(named[row], out var calendar))
            {
                calendar = project.CalendarOf(calendars.Codes[calendars.RowOf(named[row])]);
                made.Add(named[row], calendar);
            }

            return calendar;
        };
    }

    /// <summary>
    /// True if work might lead beyond the end of a calendar: one of them has no working weekday, or there are more working
    /// days than any calendar can be sure to hold.
    /// </summary>
    internal static bool MayLeaveCalendars(Project project)
    {
        const long ManyDays = 1_000_000;
        foreach (var week in project[CalendarTable.Definition].Ints(CalendarTable.Working))
        {
            if (week == 0)
            {
                return true;
            }
        }

        var days = 0L;
        foreach (var duration in project[ActivityTable.Definition].Ints(ActivityTable.Duration))
        {
            days += Math.Max(0, duration);
        }

        foreach (var lag in project[LinkTable.Definition].Ints(LinkTable.Lag))
        {
            days += Math.Max(0, lag);
        }

        return days > ManyDays;
    }

    /// <summary>Numbers the activities and reads what the network is computed from.</summary>
    private sealed class Activities
    {
        private readonly Project project;
        private readonly Table table;
        private readonly int[] ofRow;

        public Activities(Project project)
        {
            this.project = project;
            table = project[ActivityTable.Definition];
            var packages = project.Tree.PackageCount;
            var rowsOf = RowGroups.By(
                Array.ConvertAll(
                    table.Ints(ActivityTable.Package).ToArray(),
                    project.Tree.PackageOfId
                ),
                packages
            );
            List<int> package = new(table.Count + packages);
            List<int> row = new(table.Count + packages);
            FirstOfPackage = new int[packages + 1];
            ofRow = new int[table.Count];
            ofRow.AsSpan().Fill(-1);
            for (var owner = 0; owner < packages; owner++)
            {
                FirstOfPackage[owner] = row.Count;
                foreach (var own in rowsOf[owner])
                {
                    ofRow[own] = row.Count;
                    package.Add(owner);
                    row.Add(own);
                }

                if (rowsOf[owner].IsEmpty)
                {
                    package.Add(owner);
                    row.Add(-1);
                }
            }

            FirstOfPackage[packages] = row.Count;
            Package = [.. package];
            Row = [.. row];
            var codes = new string[Row.Length];
            for (var activity = 0; activity < codes.Length; activity++)
            {
                codes[activity] =
                    Row[activity] < 0
                        ? project.Tree.Code(project.Tree.PackageRows[Package[activity]])
                        : table.Codes[Row[activity]]!;
            }

            Codes = codes;
            (From, To, LinkRow) = Links();
        }

        public int[] Package { get; }

        public int[] Row { get; }

        public int[] FirstOfPackage { get; }

        public IReadOnlyList<string> Codes { get; }

        public int[] From { get; }

        public int[] To { get; }

        public int[] LinkRow { get; }

        public NetworkInput Input(DateOnly? statusDate)
        {
            var start =
                project.Settings.Start
                ?? throw new NetworkException(
                    "it needs the first day of the project, the key start in project.csv"
                );
            var links = project[LinkTable.Definition];
            var (calendars, calendarCodes, calendarOf) = Calendars();
            var (started, finished, remaining) = Progress(statusDate);
            return new NetworkInput
            {
                Codes = Codes,
                Duration = Durations(),
                Calendar = calendarOf,
                Conditions = new ActivityConditions(
                    Days(ActivityTable.StartNoEarlier),
                    Days(ActivityTable.StartNoLater),
                    Days(ActivityTable.FinishNoEarlier),
                    Days(ActivityTable.FinishNoLater),
                    Days(ActivityTable.StartOn),
                    Days(ActivityTable.FinishOn),
                    Days(ActivityTable.RequiredBy)
                ),
                Started = started,
                Finished = finished,
                Remaining = remaining,
                From = From,
                To = To,
                Type = OfLinks(links, LinkTable.Type, 0),
                Lag = OfLinks(links, LinkTable.Lag, 0),
                Calendars = calendars,
                CalendarCodes = calendarCodes,
                Start = start.DayNumber,
                StatusDay = statusDate?.DayNumber,
                LogicHolds = project.Settings.LogicHolds,
            };
        }

        private (int[] From, int[] To, int[] Row) Links()
        {
            var links = project[LinkTable.Definition];
            var fromCells = links.Ints(LinkTable.From);
            var toCells = links.Ints(LinkTable.To);
            List<int> from = new(links.Count);
            List<int> to = new(links.Count);
            List<int> rows = new(links.Count);
            for (var row = 0; row < links.Count; row++)
            {
                var before = End(LinkTable.From, fromCells[row]);
                var after = End(LinkTable.To, toCells[row]);
                if (before >= 0 && after >= 0)
                {
                    from.Add(before);
                    to.Add(after);
                    rows.Add(row);
                }
            }

            return ([.. from], [.. to], [.. rows]);
        }

        /// <summary>The activity that an end of a link names; −1 for a package that is linked by its activities.</summary>
        private int End(ColumnDefinition column, int cell)
        {
            if (!Cell.IsGiven(cell))
            {
                return -1;
            }

            var (target, id) = column.DecodeReference(cell);
            if (target == 0)
            {
                return table.RowOf(id) is var row and >= 0 ? ofRow[row] : -1;
            }

            var package = project.Tree.PackageOfId(id);
            return package >= 0 && Row[FirstOfPackage[package]] < 0 ? FirstOfPackage[package] : -1;
        }

        private int[] Durations()
        {
            var given = table.Ints(ActivityTable.Duration);
            var durations = new int[Row.Length];
            for (var activity = 0; activity < durations.Length; activity++)
            {
                var package = Package[activity];
                durations[activity] =
                    Row[activity] >= 0 ? given[Row[activity]]
                    : project.Baseline.IsScheduled(package)
                        ? project.Calendar.WorkingDays(
                            DateOnly.FromDayNumber(project.Baseline.Start[package]),
                            DateOnly.FromDayNumber(project.Baseline.Finish[package])
                        )
                    : 0;
            }

            return durations;
        }

        private (List<WorkCalendar> Calendars, List<string?> Codes, int[] Of) Calendars()
        {
            var rows = project[CalendarTable.Definition];
            var named = table.Ints(ActivityTable.Calendar);
            List<WorkCalendar> calendars = [project.Calendar];
            List<string?> codes = [project.Settings.Calendar];
            Dictionary<int, int> ofCalendarRow = [];
            if (project.Settings.Calendar is { } own && rows.RowOfCode(own) is var ownRow and >= 0)
            {
                ofCalendarRow[ownRow] = 0;
            }

            var of = new int[Row.Length];
            for (var activity = 0; activity < of.Length; activity++)
            {
                if (Row[activity] < 0 || named[Row[activity]] == Cell.NoInt)
                {
                    continue;
                }

                var row = rows.RowOf(named[Row[activity]]);
                if (!ofCalendarRow.TryGetValue(row, out var calendar))
                {
                    calendar = calendars.Count;
                    calendars.Add(project.CalendarOf(rows.Codes[row]));
                    codes.Add(rows.Codes[row]);
                    ofCalendarRow.Add(row, calendar);
                }

                of[activity] = calendar;
            }

            return (calendars, codes, of);
        }

        private int[] Days(ColumnDefinition column)
        {
            var given = table.Ints(column);
            var days = NetworkInput.NoDays(Row.Length);
            for (var activity = 0; activity < days.Length; activity++)
            {
                days[activity] = Row[activity] < 0 ? Cell.NoInt : given[Row[activity]];
            }

            return days;
        }

        private int[] OfLinks(Table links, ColumnDefinition column, int empty)
        {
            var given = links.Ints(column);
            var values = new int[LinkRow.Length];
            for (var link = 0; link < values.Length; link++)
            {
                values[link] = Cell.IsGiven(given[LinkRow[link]]) ? given[LinkRow[link]] : empty;
            }

            return values;
        }

        private (int[] Started, int[] Finished, int[] Remaining) Progress(DateOnly? statusDate)
        {
            var started = NetworkInput.NoDays(Row.Length);
            var finished = NetworkInput.NoDays(Row.Length);
            var remaining = NetworkInput.NoDays(Row.Length);
            var period = statusDate is { } date ? project.Periods.LastEndedBy(date) : -1;
            if (period < 0)
            {
                return (started, finished, remaining);
            }

            var reports = new ActivityReports(
                project[ActivityStatusTable.Definition],
                table,
                project.Periods
            );
            var status = project.Status;
            for (var activity = 0; activity < Row.Length; activity++)
            {
                (started[activity], finished[activity], remaining[activity]) =
                    Row[activity] >= 0
                        ? reports.At(Row[activity], period)
                        : (
                            status.StartedAt(Package[activity], period),
                            status.FinishedAt(Package[activity], period),
                            status.RemainingAt(Package[activity], period)
                        );
            }

            return (started, finished, remaining);
        }
    }
}
