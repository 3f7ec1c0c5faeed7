using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>project, calendars, calendar_days, periods.</summary>
internal static class ProjectTables
{
    public static void Write(TableFolder tables)
    {
        var project = tables.Open("project", "key", "value");
        project.Text("code").Text("KBY").EndRow();
        project.Text("name").Text(ElementTables.RootName).EndRow();
        project.Text("currency").Text("EUR").EndRow();
        project.Text("start").Date(DemoTime.Start).EndRow();
        project.Text("status_date").Date(DemoTime.StatusDate).EndRow();
        project.Text("calendar").Text("site").EndRow();
        project.Text("variance_threshold").Text("10").EndRow();
        project.Text("accruals").Text("reversed").EndRow();
        project.Text("progress").Text("logic_holds").EndRow();
        project.Text("manager_open_packages").Text("60").EndRow();
        project.Text("code_mask").Text("00.0.00.0").EndRow();
        project
            .Text("level_names")
            .Text("Project; System; Subsystem; Component; Work package")
            .EndRow();

        var calendars = tables.Open("calendars", "calendar", "working", "name");
        calendars.Text("site").Text("1111100").Text("Site, five days").EndRow();
        calendars.Text("six").Text("1111110").Text("Civil works, six days").EndRow();
        calendars
            .Text("marine")
            .Text("1111110")
            .Text("Marine works, six days, winter stop")
            .EndRow();

        var days = tables.Open("calendar_days", "calendar", "date", "working", "note");
        foreach (var (date, (working, note)) in DemoTime.SiteDays)
        {
            days.Text("site").Date(date).Whole(working ? 1 : 0).Text(note).EndRow();
        }
        var holidays = DemoTime.SiteDays.Where(day => !day.Value.Working).ToList();
        foreach (var (date, (_, note)) in holidays)
        {
            days.Text("six").Date(date).Whole(0).Text(note).EndRow();
        }
        var marine = new SortedDictionary<DateOnly, string>(
            holidays.ToDictionary(day => day.Key, day => day.Value.Note)
        );
        foreach (var date in DemoTime.WinterStop)
        {
            marine.TryAdd(date, "Winter stop");
        }
        foreach (var (date, note) in marine)
        {
            days.Text("marine").Date(date).Whole(0).Text(note).EndRow();
        }

        var periods = tables.Open("periods", "period", "end");
        foreach (var period in DemoTime.Periods)
        {
            periods.Text(period.Name).Date(period.End).EndRow();
        }
    }
}
