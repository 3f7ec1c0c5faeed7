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

    /// <summary>For every package that is under way at the status date, apportioned effort left to its base.</summary>
    public static Dictionary<string, OpenInterval> OfDemo(TextProject text)
    {
        var held = Held(text);
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
                "milestones" => Milestones(text, code),
                "units" => Units(text, code, fields),
                "items" => Items(text, code),
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

    private static OpenInterval Milestones(TextProject text, string package)
    {
        var reached = text.Rows("milestone_status")
            .Where(row => row["package"] == package)
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
            .OrderBy(row => row["planned"], StringComparer.Ordinal)
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

    private static OpenInterval Items(TextProject text, string package)
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

    /// <summary>The fields of the status rows that hold at the status date.</summary>
    private static Dictionary<string, Dictionary<string, string>> Held(TextProject text)
    {
        Dictionary<string, Dictionary<string, string>> held = new(StringComparer.Ordinal);
        foreach (
            var row in text.Rows("status").OrderBy(row => row["period"], StringComparer.Ordinal)
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

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
