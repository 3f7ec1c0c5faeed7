using DuckDB.NET.Data;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Bench;

/// <summary>Budgets of packages spread over their periods and added up by control account and period.</summary>
internal sealed class TimePhaseBenchmark : Benchmark
{
    private readonly PackageProject data;
    private readonly PackageBaseline baseline;
    private readonly PeriodTimeline periods;
    private readonly WorkCalendar calendar;
    private readonly int[] periodOfDay;
    private readonly double[] floor;
    private readonly long[] grid;
    private readonly DuckDBConnection duck;
    private readonly int budgets;

    public TimePhaseBenchmark(Setting setting)
    {
        data = new PackageProject(
            setting.Size(300_000),
            setting.Size(3_000),
            periods: 120,
            setting.Seed
        );
        var project = PackageProject.Of([
            .. data.Frame(),
            data.PackageRows(_ => TechniqueCodec.Percent, _ => PackageTable.Even),
            data.BudgetRows(mostCostElements: 3),
        ]);
        baseline = project.Baseline;
        periods = project.Periods;
        calendar = project.Calendar;
        periodOfDay = periods.FirstEndingFromEach();
        budgets = project[BudgetTable.Definition].Count;
        grid = new long[data.Accounts * periods.Count];
        floor = new double[grid.Length];
        duck = FilledDuck();
        List<Contender> contenders =
        [
            new("budget of a package evenly in doubles, not rounded", Role.Floor, SpreadDoubles),
            new("bare loop in C#, unchecked", Role.Limit, BareLoop) { Answer = GridAnswer },
            new("Plenum, planned value and sums by account", Role.Plenum, SpreadExactly)
            {
                Answer = GridAnswer,
            },
            new("DuckDB, both cores", Role.Tool, RunDuck) { Answer = DuckAnswer },
        ];
        if (setting.Limits is { } limits)
        {
            contenders.Insert(
                1,
                new(
                    "loop in C++",
                    Role.Limit,
                    () =>
                    {
                        Array.Clear(grid);
                        limits.TimePhase(
                            data.Start,
                            data.Finish,
                            baseline.Budget,
                            data.AccountOf,
                            data.PeriodEnds,
                            grid
                        );
                    }
                )
                {
                    Answer = GridAnswer,
                }
            );
        }

        Contenders = contenders;
    }

    public override string Question =>
        $"{data.Packages} packages ({budgets} budgets by cost element) over their periods into {data.Accounts} "
        + $"accounts x {periods.Count} periods.";

    public override string Data =>
        "Even spread over working days, Monday to Friday, four weeks to two years to a package; every cost element is "
        + "rounded half up on its running total. Inside the clock: from columns in memory to the sums. Plenum also "
        + "keeps every package's plan by cost element and period, of any technique, spread and calendar.";

    public override IReadOnlyList<Contender> Contenders { get; }

    protected override void Dispose(bool disposing)
    {
        duck.Dispose();
        base.Dispose(disposing);
    }

    private string GridAnswer() => Checksum.Of(grid);

    private void SpreadDoubles()
    {
        Array.Clear(floor);
        var worked = Worked();
        for (var package = 0; package < data.Packages; package++)
        {
            var before = (double)(calendar.NumberOf(Day(data.Start[package] - 1)));
            var whole = calendar.NumberOf(Day(data.Finish[package])) - before;
            var perDay = baseline.TotalBudget[package] / whole;
            var at = data.AccountOf[package] * periods.Count;
            var period = FirstPeriod(data.Start[package]);
            for (; data.PeriodEnds[period] < data.Finish[package]; period++)
            {
                floor[at + period] += perDay * (worked[period] - before);
                before = worked[period];
            }

            floor[at + period] += perDay * (before + whole - before);
        }
    }

    private void BareLoop()
    {
        Array.Clear(grid);
        var worked = Worked();
        unchecked // a loop to compare with: the data fit
        {
            for (var package = 0; package < data.Packages; package++)
            {
                var finish = data.Finish[package];
                long before = calendar.NumberOf(Day(data.Start[package] - 1));
                var whole = (ulong)(calendar.NumberOf(Day(finish)) - before);
                var from = FirstPeriod(data.Start[package]);
                var sums = grid.AsSpan(data.AccountOf[package] * periods.Count, periods.Count);
                foreach (
                    var amount in baseline.Budget.AsSpan(
                        package * CostElements.Count,
                        CostElements.Count
                    )
                )
                {
                    if (amount == 0)
                    {
                        continue;
                    }

                    var running = 0L;
                    var period = from;
                    for (; data.PeriodEnds[period] < finish; period++)
                    {
                        var total = (long)(
                            ((ulong)(amount * (worked[period] - before)) + (whole / 2)) / whole
                        );
                        sums[period] += total - running;
                        running = total;
                    }

                    sums[period] += amount - running;
                }
            }
        }
    }

    private void SpreadExactly()
    {
        Array.Clear(grid);
        var planned = PlannedValue.Of(baseline, periods, calendar);
        for (var package = 0; package < data.Packages; package++)
        {
            var sums = grid.AsSpan(data.AccountOf[package] * periods.Count, periods.Count);
            for (var costElement = 0; costElement < CostElements.Count; costElement++)
            {
                planned.AddChangesTo((package * CostElements.Count) + costElement, sums);
            }
        }
    }

    private int FirstPeriod(int day) =>
        day <= data.PeriodEnds[0] ? 0 : periodOfDay[day - data.PeriodEnds[0]];

    private int[] Worked() => Array.ConvertAll(data.PeriodEnds, end => calendar.NumberOf(Day(end)));

    private static DateOnly Day(int number) => DateOnly.FromDayNumber(number);

    private void RunDuck() =>
        Execute(
            """
            CREATE OR REPLACE TABLE sums AS
            WITH shares AS (
                SELECT b.account, b.amount, b.whole, p.place,
                    least(p.worked, b.before_start + b.whole) - b.before_start AS done,
                    greatest(p.worked_before, b.before_start) - b.before_start AS done_before
                FROM budgets b JOIN periods p
                    ON p.worked > b.before_start AND p.worked_before < b.before_start + b.whole
            )
            SELECT account, place, CAST(sum(
                (amount * done + whole // 2) // whole - (amount * done_before + whole // 2) // whole
            ) AS BIGINT) AS planned
            FROM shares GROUP BY account, place
            """
        );

    private string DuckAnswer()
    {
        using var command = duck.CreateCommand();
        command.CommandText =
            $"SELECT {Checksum.Sql("planned", $"(account * {periods.Count} + place)")} FROM sums";
        return (string)command.ExecuteScalar()!;
    }

    private void Execute(string sql)
    {
        using var command = duck.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private DuckDBConnection FilledDuck()
    {
        var database = new DuckDBConnection("Data Source=:memory:");
        database.Open();
        using (var command = database.CreateCommand())
        {
            command.CommandText =
                "CREATE TABLE periods (place BIGINT, worked BIGINT, worked_before BIGINT);"
                + "CREATE TABLE budgets (account BIGINT, before_start BIGINT, whole BIGINT, amount BIGINT)";
            command.ExecuteNonQuery();
        }

        var worked = Worked();
        using (var appender = database.CreateAppender("periods"))
        {
            for (var period = 0; period < worked.Length; period++)
            {
                appender
                    .CreateRow()
                    .AppendValue((long)period)
                    .AppendValue((long)worked[period])
                    .AppendValue(period == 0 ? 0L : worked[period - 1])
                    .EndRow();
            }
        }

        using (var appender = database.CreateAppender("budgets"))
        {
            for (var atom = 0; atom < baseline.Budget.Length; atom++)
            {
                var package = atom / CostElements.Count;
                long before = calendar.NumberOf(Day(data.Start[package] - 1));
                if (baseline.Budget[atom] != 0)
                {
                    appender
                        .CreateRow()
                        .AppendValue((long)data.AccountOf[package])
                        .AppendValue(before)
                        .AppendValue(calendar.NumberOf(Day(data.Finish[package])) - before)
                        .AppendValue(baseline.Budget[atom])
                        .EndRow();
                }
            }
        }

        return database;
    }
}
