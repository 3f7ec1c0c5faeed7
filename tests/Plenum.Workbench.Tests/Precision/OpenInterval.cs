using System.Globalization;
using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Precision;

/// <summary>
/// Between which shares the true progress of an open package of the demo may lie, and what it has earned: read from the
/// tables by hand, apart from the engine.
/// </summary>
internal readonly record struct OpenInterval(double Earned, double Low, double High)
{
    private const double AssessorError = 0.10;

    /// <summary>For every package that is under way at a period's end, apportioned effort left to its base.</summary>
    /// <param name="text">The tables.</param>
    /// <param name="until">The last period whose reports count; null for all.</param>
    public static Dictionary<string, OpenInterval> OfDemo(TextProject text, string? until = null)
    {
        var held = Held(text, until);
        Dictionary<string, OpenInterval> open = new(StringComparer.Ordinal);
        foreach (var package in text.Rows("packages"))
        {
            var code = package["package"];
            var fields = held.GetValueOrDefault(code) ?? [];
            if (
                fields.ContainsKey("finished")
                || !fields.ContainsKey("started")
                || package["technique"] is "loe" or "apportioned"
            )
            {
                continue;
            }

            open[code] = package["technique"] switch
            {
                "percent" => Judged(Number(fields.GetValueOrDefault("percent", "0")) / 100),
                "milestones" => Milestones(text, code, until),
                "units" => Units(text, code, fields),
                "items" => Items(text, code, until),
                var startFinish => new OpenInterval(
                    Number(startFinish[..startFinish.IndexOf('/', StringComparison.Ordinal)]) / 100,
                    0,
                    1
                ),
            };
        }

        return open;
    }

    private static OpenInterval Judged(double percent) =>
        new(percent, percent - AssessorError, percent + AssessorError);

    private static OpenInterval Milestones(TextProject text, string package, string? until)
    {
        var reached = text.Rows("milestone_status")
            .Where(row => row["package"] == package && IsIn(row, until))
            .Select(row => row["milestone"])
            .ToHashSet(StringComparer.Ordinal);
        var milestones = text.Rows("milestones").Where(row => row["package"] == package).ToList();
        var all = milestones.Sum(row => Number(row["weight"]));
        var earned =
            milestones
                .Where(row => reached.Contains(row["milestone"]))
                .Sum(row => Number(row["weight"])) / all;
        var next = milestones
            .Where(row => !reached.Contains(row["milestone"]))
            // one without a planned date is planned at the finish of the package
            .OrderBy(row => row.Has("planned") ? row["planned"] : "9", StringComparer.Ordinal)
            .Select(row => Number(row["weight"]))
            .FirstOrDefault();
        return new OpenInterval(earned, earned, earned + (next / all));
    }

    private static OpenInterval Units(
        TextProject text,
        string package,
        Dictionary<string, string> fields
    )
    {
        var quantity = Number(
            fields.GetValueOrDefault(
                "quantity",
                text.Rows("elements").Single(row => row["code"] == package)["quantity"]
            )
        );
        var earned = Math.Min(1, Number(fields.GetValueOrDefault("units_done", "0")) / quantity);
        return new OpenInterval(earned, earned, Math.Min(1, earned + (1 / quantity)));
    }

    private static OpenInterval Items(TextProject text, string package, string? until)
    {
        var items = text.Rows("items").Where(row => row["package"] == package).ToList();
        var hours = items.Sum(row => Number(row["hours"]));
        var earned = 0.0;
        var next = 0.0;
        foreach (var item in items)
        {
            foreach (
                var step in text.Rows("credit_steps")
                    .Where(row => row["rule"] == item["rule"])
                    .OrderBy(row => Number(row["order"]))
            )
            {
                var weight = Number(item["hours"]) / hours * Number(step["percent"]) / 100;
                var rows = text.Rows("item_steps")
                    .Where(row =>
                        row["package"] == package
                        && row["item"] == item["item"]
                        && row["step"] == step["step"]
                        && IsIn(row, until)
                    )
                    .OrderBy(row => row["period"], StringComparer.Ordinal)
                    .ToList();
                var part =
                    rows.Count == 0 ? 0
                    : !rows[^1].Has("quantity") ? 1
                    : Math.Min(1, Number(rows[^1]["quantity"]) / Number(item["quantity"]));
                earned += weight * part;
                if (part < 1 && next == 0)
                {
                    next =
                        rows.Count == 0 ? weight : weight / Math.Max(1, Number(item["quantity"]));
                }
            }
        }

        return new OpenInterval(earned, earned, earned + next);
    }

    /// <summary>The fields of the status rows that hold at the period's end.</summary>
    private static Dictionary<string, Dictionary<string, string>> Held(
        TextProject text,
        string? until
    )
    {
        Dictionary<string, Dictionary<string, string>> held = new(StringComparer.Ordinal);
        foreach (
            var row in text.Rows("status")
                .Where(row => IsIn(row, until))
                .OrderBy(row => row["period"], StringComparer.Ordinal)
        )
        {
            if (!held.TryGetValue(row["package"], out var fields))
            {
                held[row["package"]] = fields = new(StringComparer.Ordinal);
            }

            foreach (var column in row.Columns.Where(row.Has))
            {
                fields[column] = row[column];
            }
        }

        return held;
    }

    /// <summary>Codes of periods are in the order of time.</summary>
    private static bool IsIn(TextRow row, string? until) =>
        until is null || string.CompareOrdinal(row["period"], until) <= 0;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
