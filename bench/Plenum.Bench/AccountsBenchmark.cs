using System.Globalization;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Bench;

/// <summary>How it is going by control account, asked of a project that has just been loaded; and what it is made of.</summary>
internal sealed class AccountsBenchmark : Benchmark
{
    private const int Periods = 120;
    private const int Current = 80;

    private static readonly int[] Techniques =
    [
        TechniqueCodec.Percent,
        TechniqueCodec.Percent,
        TechniqueCodec.Percent,
        TechniqueCodec.LevelOfEffort,
        50,
        0,
    ];

    private readonly Table[] tables;
    private readonly PackageProject data;
    private readonly Project warm;
    private readonly StatusSources sources;
    private MeasureSums total;

    public AccountsBenchmark(Setting setting)
    {
        data = new PackageProject(
            setting.Size(300_000),
            setting.Size(3_000),
            Periods,
            setting.Seed
        );
        tables =
        [
            .. data.Frame(),
            data.PackageRows(
                package => Techniques[package % Techniques.Length],
                package => package / Techniques.Length % 4
            ),
            data.BudgetRows(mostCostElements: 3),
            data.StatusRows(Current),
            data.ActualRows(setting.Size(1_000_000), Current),
        ];
        warm = PackageProject.Of(tables);
        sources = new StatusSources(
            warm.Periods,
            warm[StatusTable.Definition],
            warm[MilestoneStatusTable.Definition],
            warm[ItemTable.Definition],
            warm[CreditStepTable.Definition],
            warm[ItemStepTable.Definition]
        );
        var cut = warm.CutsUnder(-1).ByAccount();
        Contenders =
        [
            new("read through every cell of the tables", Role.Floor, ReadTables),
            new("Plenum, all of it", Role.Plenum, () => Ask(PackageProject.Of(tables)))
            {
                Answer = TotalAnswer,
            },
            new("of it: breakdown, baseline, reports, placement", Role.Plenum, Frame),
            new("of it: planned value", Role.Plenum, Plan),
            new("of it: earned value", Role.Plenum, Earn),
            new("of it: actual cost", Role.Plenum, Spend),
            new("again by account, all kept", Role.Plenum, () => Ask(warm))
            {
                Answer = TotalAnswer,
            },
            new(
                "of it: measures at one date",
                Role.Plenum,
                () => total = CutMeasures.At(warm.TimePhased, cut, Current, false).Total
            )
            {
                Answer = TotalAnswer,
            },
        ];
    }

    public override string Question =>
        $"Measures of every control account at a date, and planned and earned value over all periods: {data.Packages} "
        + $"packages, {Rows(BudgetTable.Definition)} budgets, {Rows(StatusTable.Definition)} reports, "
        + $"{Rows(ActualTable.Definition)} ledger rows, {data.Accounts} accounts, {Periods} periods.";

    public override string Data =>
        "Techniques per cent (half of the packages), level of effort, 50/50 and 0/100; all four spreads. Inside the "
        + "clock: from tables in memory, nothing computed yet, to the measures.";

    public override IReadOnlyList<Contender> Contenders { get; }

    private int Rows(TableDefinition definition) =>
        tables.First(table => table.Definition == definition).Count;

    private void Ask(Project project)
    {
        var cut = project.CutsUnder(-1).ByAccount();
        total = CutMeasures.At(project.TimePhased, cut, Current, periodOnly: false).Total;
        CutSeries.Walk(project.TimePhased, cut, (_, _, _) => { });
    }

    private void Frame()
    {
        var project = PackageProject.Of(tables);
        _ = project.Placement;
        _ = project.Status;
    }

    private string TotalAnswer() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{total.BudgetAtCompletion} {total.PlannedValue} {total.EarnedValue} {total.ActualCost} {total.Remaining}"
        );

    private void ReadTables()
    {
        var sum = 0L;
        foreach (var table in tables)
        {
            foreach (var column in table.Definition.Columns)
            {
                sum = unchecked(
                    sum
                    + column.Storage switch
                    {
                        ColumnStorage.Int => Sum(table.Ints(column)),
                        ColumnStorage.Long => Sum(table.Longs(column)),
                        _ => 0,
                    }
                );
            }
        }

        GC.KeepAlive(sum);
    }

    private static long Sum(ReadOnlySpan<int> values)
    {
        var sum = 0L;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum;
    }

    private static long Sum(ReadOnlySpan<long> values)
    {
        var sum = 0L;
        foreach (var value in values)
        {
            sum = unchecked(sum + value); // only to read it; cells that are not given are near the end of the range
        }

        return sum;
    }

    private void Plan() => _ = PlannedValue.Of(warm.Baseline, warm.Periods, warm.Calendar);

    private void Earn() =>
        _ = EarnedValue.Of(warm.Baseline, warm.Status, sources, warm.TimePhased.Planned);

    private void Spend() =>
        _ = ActualCost.Of(
            warm.Baseline,
            warm[AccountTable.Definition],
            warm.Periods,
            warm[ActualTable.Definition],
            accrualsReversed: true
        );
}
