using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>activities, links.</summary>
internal static class NetworkTables
{
    public static void Write(DemoPlan plan, TableFolder tables)
    {
        var activities = tables.Open(
            "activities",
            "activity",
            "package",
            "name",
            "duration",
            "calendar",
            "start_no_earlier",
            "required_by",
            "low",
            "high"
        );
        var links = tables.Open("links", "from", "to", "type", "lag");
        foreach (var package in plan.Packages)
        {
            foreach (var activity in package.Activities)
            {
                var isFirst = activity == package.Activities[0];
                activities
                    .Text(activity.Code)
                    .Text(package.Code)
                    .Text(activity.Name)
                    .Whole(activity.Days)
                    .Text(activity.Calendar)
                    .DateOrEmpty(
                        isFirst && package.NotBefore is { } day ? DemoTime.Date(day) : null
                    )
                    .Empty()
                    .Whole(activity.Days * 9 / 10)
                    .Whole((activity.Days * 13 / 10) + 1)
                    .EndRow();
            }
            if (package.Milestone is { } milestone)
            {
                activities
                    .Text(milestone.Code)
                    .Text(package.Code)
                    .Text(milestone.Name)
                    .Whole(0)
                    .Empty()
                    .Empty()
                    .DateOrEmpty(milestone.Required)
                    .Empty()
                    .Empty()
                    .EndRow();
            }
            WriteLinks(links, package);
        }
    }

    private static void WriteLinks(TableWriter links, Package package)
    {
        foreach (var link in package.Into)
        {
            var from = Activities.LinkCode(link.From, last: link.Type is "FS" or "FF");
            var to = Activities.LinkCode(link.To, last: link.Type is "FF" or "SF");
            links
                .Text(from)
                .Text(to)
                .Text(link.Type)
                .WholeOrEmpty(link.Lag == 0 ? null : link.Lag)
                .EndRow();
        }
        for (var i = 1; i < package.Activities.Count; i++)
        {
            links
                .Text(package.Activities[i - 1].Code)
                .Text(package.Activities[i].Code)
                .Text("FS")
                .Empty()
                .EndRow();
        }
        if (package.Milestone is { } milestone)
        {
            links
                .Text(package.Activities[^1].Code)
                .Text(milestone.Code)
                .Text("FS")
                .Empty()
                .EndRow();
        }
    }
}
