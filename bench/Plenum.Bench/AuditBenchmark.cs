using System.Diagnostics;
using System.Globalization;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;
using Plenum.Samples;

namespace Plenum.Bench;

/// <summary>Everything that the audit finds, at first and after an edit; and the precision of every account.</summary>
internal sealed class AuditBenchmark : Benchmark
{
    private const int EditsInARow = 1_000;

    private readonly Project project;
    private readonly AuditedProject audited;
    private readonly Edits edits;
    private readonly ulong seed;
    private (Project Next, TableChange[] Changes) edit;
    private AuditedProject found;
    private double known;

    public AuditBenchmark(Setting setting)
    {
        seed = setting.Seed;
        SyntheticProject.Write(setting.Folder, setting.Size(453_000), setting.Seed);
        var import = Importer.Run(Project.Empty, [setting.Folder], replace: false);
        project = new Project(import.Project.Tables, 1);
        audited = AuditedProject.Of(project);
        found = audited;
        edits = new Edits(setting.Seed);
        Contenders =
        [
            new("read through every cell of the tables", Role.Floor, ReadTables),
            new("Plenum, all rules, nothing computed before", Role.Plenum, AskAll)
            {
                Answer = Findings,
            },
            new("of it: the rules, all they read being computed", Role.Plenum, AskRules),
            new("of it: precision of every account in every period", Role.Plenum, Precision),
            .. Edits
                .Kinds.Distinct(StringComparer.Ordinal)
                .Select(kind => new Contender(
                    $"Plenum, after an edit: {kind}",
                    Role.Plenum,
                    () => _ = audited.After(edit.Next, edit.Changes)
                )
                {
                    Before = () => edit = edits.Of(project, kind),
                    After = () => edit = default,
                }),
        ];
    }

    public override string Question =>
        $"All findings of {ProjectAudit.Rules(project).Count} rules in a project of {project.Tree.Count} elements, "
        + $"{project.Tree.PackageCount} packages, {Rows} rows in all; {audited.Findings.Count()} findings.";

    public override string Data =>
        "The synthetic project of the seed, as its files are imported. Inside the clock: from tables in memory to all "
        + "findings; after an edit, from the audit of the value before and the value after. An edit changes one cell of one row, "
        + "or moves one package to another part; its table is made outside the clock.";

    public override IReadOnlyList<Contender> Contenders { get; }

    public override IEnumerable<string> Notes
    {
        get
        {
            var floor = MedianOf([
                .. Enumerable.Range(0, 9).Select(_ => Timed(ReadTables).Processor),
            ]);
            var clock = new List<double>(EditsInARow);
            var processor = new List<double>(EditsInARow);
            var stream = new Edits(seed + 1);
            var now = audited;
            for (var made = 0; made < EditsInARow; made++)
            {
                var (next, changes) = stream.Of(now.Project, Edits.Kinds[made % Edits.Kinds.Count]);
                var cost = Timed(() => now = now.After(next, changes));
                clock.Add(cost.Clock);
                processor.Add(cost.Processor);
            }

            var all = AuditedProject.Of(new Project(now.Project.Tables, 1));
            var same = all.Findings.SequenceEqual(now.Findings) ? "the same" : "NOT the same";
            yield return $"{EditsInARow} edits in a row, of all kinds, {EditsOfElements} % of them of names, people, allotted "
                + $"money and dictionary. Milliseconds by the clock: {Spread(clock, 1)}. Processor time in reads of all cells "
                + $"({Report.Number(floor)} ms): {Spread(processor, floor)}. Afterwards the findings are {same} as those of all rules.";
        }
    }

    private static int EditsOfElements =>
        100
        * Edits.Kinds.Count(kind => kind is "name" or "person" or "allotted" or "dictionary")
        / Edits.Kinds.Count;

    private static string Spread(List<double> values, double unit) =>
        $"median {Report.Number(MedianOf(values) / unit)}, nine in ten within "
        + $"{Report.Number(values.Order().ElementAt(values.Count * 9 / 10) / unit)}, worst {Report.Number(values.Max() / unit)}";

    private int Rows => project.Tables.Sum(table => table.Count);

    private static (double Clock, double Processor) Timed(Action run)
    {
        var processor = Environment.CpuUsage.TotalTime;
        var start = Stopwatch.GetTimestamp();
        run();
        return (
            Stopwatch.GetElapsedTime(start).TotalMilliseconds,
            (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds
        );
    }

    private static double MedianOf(List<double> values) =>
        values.Order().ElementAt(values.Count / 2);

    private void AskAll() => found = AuditedProject.Of(new Project(project.Tables, 1));

    private string Findings() => found.Findings.Count().ToString(CultureInfo.InvariantCulture);

    private void AskRules() => found = AuditedProject.Of(project);

    private void Precision()
    {
        var precision = new AccountPrecision(
            project.TimePhased,
            project.OpenShares,
            project.CutsUnder(-1).ByAccount(),
            project.Settings.VarianceThreshold
        );
        for (var period = 0; period < project.Periods.Count; period++)
        {
            known += precision.At(period).Sum(verdict => verdict.Precision ?? 0);
        }
    }

    private void ReadTables()
    {
        var sum = 0L;
        foreach (var table in project.Tables)
        {
            foreach (var column in table.Definition.Columns)
            {
                sum = unchecked(sum + Read(table, column)); // only to read it
            }
        }

        GC.KeepAlive(sum);
    }

    private static long Read(Table table, ColumnDefinition column)
    {
        var sum = 0L;
        switch (column.Storage)
        {
            case ColumnStorage.Int:
                foreach (var value in table.Ints(column))
                {
                    sum += value;
                }

                break;
            case ColumnStorage.Long:
                foreach (var value in table.Longs(column))
                {
                    sum = unchecked(sum + value); // cells that are not given are near the end of the range
                }

                break;
            case ColumnStorage.Decimal:
                foreach (var value in table.Decimals(column))
                {
                    sum += value == Cell.NoDecimal ? 0 : 1;
                }

                break;
            default:
                foreach (var value in table.Texts(column))
                {
                    sum += value?.Length ?? 0;
                }

                break;
        }

        return sum;
    }
}
