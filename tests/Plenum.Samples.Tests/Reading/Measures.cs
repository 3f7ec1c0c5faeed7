using Plenum.Samples.Tests.Rules;

namespace Plenum.Samples.Tests.Reading;

/// <summary>
/// Planned value, earned value and actual cost at the status date, computed anew from the files: slow, and apart from
/// the generator and from Plenum. Definitions as in docs/formulas.md.
/// </summary>
internal sealed class Measures
{
    private readonly ProjectFiles _files;
    private readonly ILookup<string, CsvRow> _milestones;
    private readonly ILookup<string, CsvRow> _items;
    private readonly ILookup<string, CsvRow> _status;
    private readonly ILookup<string, CsvRow> _periods;
    private readonly Dictionary<(string, string, string), string> _steps = [];
    private readonly HashSet<(string, string)> _done;
    private readonly Dictionary<string, (DateOnly? Started, DateOnly? Finished)> _held;
    private readonly ILookup<string, CsvRow> _rules;

    public Measures(ProjectFiles files)
    {
        _files = files;
        _milestones = files
            .Rows("milestones")
            .ToLookup(row => row["package"], StringComparer.Ordinal);
        _items = files.Rows("items").ToLookup(row => row["package"], StringComparer.Ordinal);
        _rules = files.Rows("credit_steps").ToLookup(row => row["rule"], StringComparer.Ordinal);
        _periods = files
            .Rows("budget_periods")
            .ToLookup(row => row["package"], StringComparer.Ordinal);
        _status = files
            .Rows("status")
            .OrderBy(row => files.PeriodEnds[row["period"]])
            .ToLookup(row => row["package"], StringComparer.Ordinal);
        foreach (
            var row in files.Rows("item_steps").OrderBy(row => files.PeriodEnds[row["period"]])
        )
        {
            _steps[(row["package"], row["item"], row["step"])] = row["quantity"];
        }
        _done = files
            .Rows("milestone_status")
            .Select(row => (row["package"], row["milestone"]))
            .ToHashSet();
        _held = StatusRules.Held(files, "status", "package");
        Actual = files
            .Rows("actuals")
            .Where(row =>
                row["kind"] == "invoiced" || files.PeriodEnds[row["period"]] == files.StatusDate
            )
            .GroupBy(row => row["charge"], StringComparer.Ordinal)
            .ToDictionary(
                group => group.Key,
                group => group.Sum(ProjectFiles.Converted),
                StringComparer.Ordinal
            );
    }

    /// <summary>Actual cost by charge code, accruals of earlier periods reversed.</summary>
    public Dictionary<string, decimal> Actual { get; }

    public decimal Planned(string package) => _files.Budgets[package] * PlannedShare(package);

    public decimal Earned(string package) => _files.Budgets[package] * EarnedShare(package);

    public decimal CostVariance(string package) =>
        Earned(package) - Actual.GetValueOrDefault(package);

    public bool IsOpen(string package) =>
        _held.GetValueOrDefault(package) is { Started: not null, Finished: null };

    public CsvRow? LastRow(string package, string field) =>
        _status[package].LastOrDefault(row => row.Has(field));

    public decimal PlannedShare(string package)
    {
        var row = _files.Packages[package];
        var (start, finish, at) = (row.Date("start"), row.Date("finish"), _files.StatusDate);
        if (row["technique"] == "apportioned")
        {
            return PlannedShare(row["base"]);
        }
        if (at < start)
        {
            return 0;
        }
        if (at >= finish)
        {
            return 1;
        }
        if (row["technique"] == "0/100")
        {
            return 0;
        }
        if (row["technique"] == "milestones")
        {
            var planned = _milestones[package]
                .Where(m => (m.DateOrNone("planned") ?? finish) <= at);
            return planned.Sum(m => m.Decimal("weight")) / 100;
        }
        if (PlanRules.IsPair(row["technique"], out var first))
        {
            return first / 100m;
        }
        var x = (decimal)_files.WorkingDays(start, at) / _files.WorkingDays(start, finish);
        return row["spread"] switch
        {
            "falling" => 1 - ((1 - x) * (1 - x)),
            "rising" => x * x,
            "s_shaped" => x * x * (3 - (2 * x)),
            "periods" => _periods[package]
                .Where(p => _files.PeriodEnds[p["period"]] <= at)
                .Sum(p => p.Decimal("amount")) / _files.Budgets[package],
            _ => x,
        };
    }

    public decimal EarnedShare(string package)
    {
        var row = _files.Packages[package];
        if (row["technique"] == "apportioned")
        {
            return EarnedShare(row["base"]);
        }
        if (row["technique"] == "loe")
        {
            return PlannedShare(package);
        }
        var (started, finished) = _held.GetValueOrDefault(package);
        if (finished is not null)
        {
            return 1;
        }
        if (started is null)
        {
            return 0;
        }
        return row["technique"] switch
        {
            "percent" => (LastRow(package, "percent")?.Decimal("percent") ?? 0) / 100,
            "units" => UnitsShare(package),
            "milestones" => _milestones[package]
                .Where(m => _done.Contains((package, m["milestone"])))
                .Sum(m => m.Decimal("weight")) / 100,
            "items" => ItemShare(package),
            _ when PlanRules.IsPair(row["technique"], out var first) => first / 100m,
            _ => throw new InvalidOperationException($"{package}: technique {row["technique"]}"),
        };
    }

    private decimal UnitsShare(string package)
    {
        var quantity =
            LastRow(package, "quantity")?.Decimal("quantity")
            ?? _files.Elements[package].Decimal("quantity");
        return (LastRow(package, "units_done")?.Decimal("units_done") ?? 0) / quantity;
    }

    private decimal ItemShare(string package)
    {
        decimal earned = 0;
        foreach (var item in _items[package])
        {
            foreach (var step in _rules[item["rule"]])
            {
                if (_steps.TryGetValue((package, item["item"], step["step"]), out var quantity))
                {
                    var share =
                        quantity.Length == 0
                            ? 1
                            : decimal.Parse(quantity, null) / item.Decimal("quantity");
                    earned += item.Decimal("hours") * step.Decimal("percent") / 100 * share;
                }
            }
        }
        return earned / _items[package].Sum(item => item.Decimal("hours"));
    }
}
