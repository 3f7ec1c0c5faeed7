using System.Globalization;
using Plenum.Core;
using Plenum.Oracle.Examples;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Oracle;

/// <summary>
/// Published networks through the same CSV import as a user's data, on a calendar of seven days a week, so that an instant
/// is a number of days after the project's start. The source of each stands with it in tests/Plenum.Oracle/Examples.
/// </summary>
public class PublishedNetworkTests
{
    private static readonly DateOnly Start = new(2026, 1, 1);

    public static TheoryData<string> Names =>
        [.. PublishedNetworks.All.Select(network => network.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_published_network_gives_its_dates_and_floats(string name)
    {
        var network = PublishedNetworks.All.Single(one => one.Name == name);
        var answer = new NetworkQuestion().Ask(Project(network));
        Assert.Equal(Start.AddDays(network.Length - 1), answer.Finish);
        foreach (var expected in network.Activities)
        {
            var row = answer.Activities.Single(one => one.Code == expected.Code);
            Same(expected, "early start", expected.EarlyStart, Instant(row.EarlyStart));
            Same(expected, "early finish", expected.EarlyFinish, Instant(row.EarlyFinish) + 1);
            Same(expected, "late start", expected.LateStart, Instant(row.LateStart));
            Same(expected, "late finish", expected.LateFinish, Instant(row.LateFinish) + 1);
            Same(expected, "total float", expected.TotalFloat, row.TotalFloat);
            Same(expected, "free float", expected.FreeFloat, row.FreeFloat);
        }

        void Same(PublishedActivity activity, string what, int? expected, int? found) =>
            Assert.True(
                expected is null || expected == found,
                $"{network.Source}: {what} of {activity.Code} is {expected}, but {found} was found"
            );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_critical_path_is_the_published_one(string name)
    {
        var network = PublishedNetworks.All.Single(one => one.Name == name);
        var answer = new NetworkQuestion().Ask(Project(network));
        Assert.Equal(
            network.Critical,
            answer.Activities.Where(row => row.IsCritical).Select(row => row.Code)
        );
        Assert.Equal(
            network.Critical,
            answer.Activities.Where(row => row.IsDriving).Select(row => row.Code)
        );
        Assert.Equal(network.Critical, answer.Chain.Select(station => station.Activity.Code));
        Assert.Equal(network.Critical.Count, answer.CriticalCount);
    }

    /// <summary>
    /// Thursday 8 January 2026 and four working days more is Tuesday 13 January, six days on the calendar. GAO-16-89G,
    /// best practice 4, uses such a span from a Thursday to a Tuesday (seen in a digest); the dates are computed.
    /// </summary>
    [Fact]
    public void Four_working_days_from_a_Thursday_end_on_a_Tuesday()
    {
        var text = NewProject("1111100", "2026-01-08");
        AddActivity(text, "A", 4);
        var row = new NetworkQuestion().Ask(Answers.Import(text)).Activities[0];
        Assert.Equal(new DateOnly(2026, 1, 8), row.EarlyStart);
        Assert.Equal(new DateOnly(2026, 1, 13), row.EarlyFinish);
    }

    /// <summary>
    /// Ten working days from Wednesday 14 January 2026 end on Tuesday 27 January, and on Wednesday 28 January if Monday 19
    /// January is a holiday. Computed by hand.
    /// </summary>
    [Theory]
    [InlineData(false, 27)]
    [InlineData(true, 28)]
    public void A_holiday_moves_the_finish_by_a_day(bool withHoliday, int day)
    {
        var text = NewProject("1111100", "2026-01-14");
        if (withHoliday)
        {
            text.Add("calendar_days", ("calendar", "C"), ("date", "2026-01-19"), ("working", "0"));
        }

        AddActivity(text, "A", 10);
        var row = new NetworkQuestion().Ask(Answers.Import(text)).Activities[0];
        Assert.Equal(new DateOnly(2026, 1, day), row.EarlyFinish);
    }

    private static int Instant(DateOnly date) => date.DayNumber - Start.DayNumber;

    private static Project Project(PublishedNetwork network)
    {
        var text = NewProject(
            "1111111",
            Start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        foreach (var activity in network.Activities)
        {
            var deadline =
                network.Deadline is var (code, instant) && code == activity.Code
                    ? Start
                        .AddDays(instant - 1)
                        .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                    : "";
            AddActivity(text, activity.Code, activity.Duration, deadline);
            foreach (
                var predecessor in activity.Predecessors.Split(
                    ',',
                    StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                )
            )
            {
                var words = predecessor.Split(' ');
                text.Add(
                    "links",
                    ("from", words[0]),
                    ("to", activity.Code),
                    ("type", words.ElementAtOrDefault(1) ?? ""),
                    ("lag", words.ElementAtOrDefault(2)?.TrimStart('+') ?? "")
                );
            }
        }

        return Answers.Import(text);
    }

    private static TextProject NewProject(string week, string start)
    {
        var text = new TextProject();
        text.Add("project", ("key", "code"), ("value", "N"));
        text.Add("project", ("key", "start"), ("value", start));
        text.Add("project", ("key", "calendar"), ("value", "C"));
        text.Add("calendars", ("calendar", "C"), ("working", week));
        text.Add("elements", ("code", "N"), ("name", "Network"), ("parent", ""));
        text.Add("elements", ("code", "N.1"), ("name", "All of it"), ("parent", "N"));
        return text;
    }

    private static void AddActivity(
        TextProject text,
        string code,
        int duration,
        string deadline = ""
    ) =>
        text.Add(
            "activities",
            ("activity", code),
            ("package", "N.1"),
            ("duration", duration.ToString(CultureInfo.InvariantCulture)),
            ("finish_no_later", deadline)
        );
}
