using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests.Rules;

/// <summary>Status and cost stand in closed periods and tell one story.</summary>
internal static class StatusRules
{
    public static void Check(ProjectFiles files, Breaches breaches)
    {
        breaches.Unless(
            files.PeriodEnds.ContainsValue(files.StatusDate),
            "the status date ends a period"
        );
        CheckDates(files, breaches, "status", "package");
        CheckDates(files, breaches, "activity_status", "activity");
        CheckValues(files, breaches);
        CheckActivities(files, breaches);
        CheckDone(files, breaches);
        foreach (
            var table in (string[])
                ["status", "activity_status", "milestone_status", "item_steps", "actuals"]
        )
        {
            foreach (var row in files.Rows(table))
            {
                breaches.Unless(
                    files.PeriodEnds[row["period"]] <= files.StatusDate,
                    $"{row}: after the status date"
                );
            }
        }
        foreach (var row in files.Rows("commitments"))
        {
            breaches.Unless(
                !row.Has("date") || row.Date("date") <= files.StatusDate,
                $"{row}: ordered in the future"
            );
            PlanRules.TwoDecimals(row, breaches, "amount", "pending");
        }
    }

    /// <summary>Start and finish of a package or activity as they stand at the end, later rows over earlier ones.</summary>
    public static Dictionary<string, (DateOnly? Started, DateOnly? Finished)> Held(
        ProjectFiles files,
        string table,
        string key
    )
    {
        var held = new Dictionary<string, (DateOnly? Started, DateOnly? Finished)>(
            StringComparer.Ordinal
        );
        foreach (var row in files.Rows(table).OrderBy(row => files.PeriodEnds[row["period"]]))
        {
            var (started, finished) = held.GetValueOrDefault(row[key]);
            held[row[key]] = (
                row.Has("started") ? row.DateOrNone("started") : started,
                row.Has("finished") ? row.DateOrNone("finished") : finished
            );
        }
        return held;
    }

    private static void CheckDates(ProjectFiles files, Breaches breaches, string table, string key)
    {
        foreach (var group in files.Rows(table).GroupBy(row => row[key], StringComparer.Ordinal))
        {
            DateOnly? started = null;
            DateOnly? finished = null;
            foreach (var row in group.OrderBy(row => files.PeriodEnds[row["period"]]))
            {
                breaches.Unless(finished is null, $"{row}: a row after the finish");
                var end = files.PeriodEnds[row["period"]];
                breaches.Unless(
                    !(row.DateOrNone("started") > end),
                    $"{row}: starts after its period"
                );
                breaches.Unless(
                    !(row.DateOrNone("finished") > end),
                    $"{row}: finishes after its period"
                );
                started = row.DateOrNone("started") ?? started;
                var before = finished;
                finished = row["finished"] == "-" ? null : row.DateOrNone("finished") ?? before;
                breaches.Unless(started is not null, $"{row}: a row before the start");
                breaches.Unless(
                    finished is null || finished >= started,
                    $"{row}: finished before it started"
                );
                if (IsTakenBackNext(group, row, files))
                {
                    finished = null;
                }
            }
        }
    }

    /// <summary>A finish that the next row withdraws is followed by rows of an open package.</summary>
    private static bool IsTakenBackNext(IEnumerable<CsvRow> group, CsvRow row, ProjectFiles files)
    {
        var next = group
            .Where(other => files.PeriodEnds[other["period"]] > files.PeriodEnds[row["period"]])
            .MinBy(other => files.PeriodEnds[other["period"]]);
        return next?["finished"] == "-";
    }

    private static void CheckValues(ProjectFiles files, Breaches breaches)
    {
        foreach (var row in files.Rows("status"))
        {
            var technique = files.Packages[row["package"]]["technique"];
            if (row.Has("percent"))
            {
                breaches.Unless(row.Decimal("percent") is >= 0 and <= 100, $"{row}: per cent");
                breaches.Unless(technique == "percent", $"{row}: per cent of another technique");
            }
            if (row.Has("units_done"))
            {
                var quantity = row.Has("quantity")
                    ? row.Decimal("quantity")
                    : files.Elements[row["package"]].Decimal("quantity");
                breaches.Unless(
                    row.Decimal("units_done") <= quantity,
                    $"{row}: more units than there are"
                );
                breaches.Unless(technique == "units", $"{row}: units of another technique");
            }
            breaches.Unless(row.DecimalOrZero("etc") >= 0, $"{row}: cost still to come");
            breaches.Unless(
                !row.Has("remaining") || row.Decimal("remaining") >= 1,
                $"{row}: remaining"
            );
            PlanRules.TwoDecimals(row, breaches, "etc", "percent");
        }
    }

    /// <summary>Where its activities report too, the package starts with the first and finishes with the last.</summary>
    private static void CheckActivities(ProjectFiles files, Breaches breaches)
    {
        var packages = Held(files, "status", "package");
        var activities = Held(files, "activity_status", "activity");
        foreach (
            var group in files
                .Rows("activities")
                .GroupBy(row => row["package"], StringComparer.Ordinal)
        )
        {
            var known = group.Select(row => activities.GetValueOrDefault(row["activity"])).ToList();
            var (started, finished) = packages.GetValueOrDefault(group.Key);
            breaches.Unless(
                known.Min(dates => dates.Started) == started,
                $"{group.Key}: starts apart from its activities"
            );
            var end = known.TrueForAll(dates => dates.Finished is not null)
                ? known.Max(dates => dates.Finished)
                : null;
            breaches.Unless(end == finished, $"{group.Key}: finishes apart from its activities");
        }
    }

    private static void CheckDone(ProjectFiles files, Breaches breaches)
    {
        foreach (var row in files.Rows("milestone_status"))
        {
            breaches.Unless(
                row.Date("done") <= files.PeriodEnds[row["period"]],
                $"{row}: done after its period"
            );
        }
        var spent = files
            .Rows("actuals")
            .Select(row => row["charge"])
            .ToHashSet(StringComparer.Ordinal);
        var started = files
            .Rows("status")
            .Select(row => row["package"])
            .ToHashSet(StringComparer.Ordinal);
        foreach (var code in spent.Where(files.Packages.ContainsKey))
        {
            breaches.Unless(started.Contains(code), $"{code}: cost before any status");
        }
    }
}
