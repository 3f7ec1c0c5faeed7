using System.Globalization;
using System.IO.MemoryMappedFiles;
using System.Text;
using DuckDB.NET.Data;
using nietras.SeparatedValues;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Exchange;
using Plenum.Exchange.Import;

namespace Plenum.Bench;

/// <summary>A ledger of actual cost read from CSV and summed by charge code and period.</summary>
internal sealed class LedgerBenchmark : Benchmark
{
    private const int Charges = 20_000;
    private const int Periods = 60;

    private readonly string path;
    private readonly long bytes;
    private readonly int rows;
    private readonly PackageProject data;
    private readonly Project project;
    private readonly long[] sums;
    private readonly DuckDBConnection duck = new("Data Source=:memory:");

    public LedgerBenchmark(Setting setting)
    {
        rows = setting.Size(5_000_000);
        data = new PackageProject(Charges, accounts: 200, Periods, setting.Seed);
        project = PackageProject.Of([
            .. data.Frame(),
            data.PackageRows(_ => TechniqueCodec.Percent, _ => PackageTable.Even),
            data.BudgetRows(mostCostElements: 3),
        ]);
        sums = new long[Charges * Periods];
        path = Path.Combine(setting.Folder, "actuals.csv");
        LedgerFile.Write(path, rows, data, setting.Seed);
        bytes = new FileInfo(path).Length;
        duck.Open();
        List<Contender> contenders =
        [
            new("line ends counted in C#", Role.Floor, CountLines),
            new("the CSV library alone, every cell touched", Role.Tool, ReadCells),
            new("Plenum, read and summed", Role.Plenum, ReadAndSum) { Answer = SumsAnswer },
            new(
                "Plenum, imported into the project with all its checks, and summed",
                Role.Plenum,
                Import
            )
            {
                Answer = SumsAnswer,
            },
            new("C#, lines split into strings", Role.Tool, SplitLines) { Answer = SumsAnswer },
            new("DuckDB, both cores", Role.Tool, () => RunDuck(2)) { Answer = DuckAnswer },
            new("DuckDB, one core", Role.Tool, () => RunDuck(1)) { Answer = DuckAnswer },
        ];
        if (setting.Limits is { } limits)
        {
            var charges = Codes(Enumerable.Range(0, Charges).Select(PackageProject.CodeOf));
            var periods = Codes(Enumerable.Range(0, Periods).Select(PackageProject.PeriodCode));
            contenders.Insert(
                0,
                new("line ends counted in C++", Role.Floor, () => limits.LineEnds(path))
            );
            contenders.Insert(
                2,
                new(
                    "loop in C++, no checks, no quotation marks",
                    Role.Limit,
                    () =>
                    {
                        Array.Clear(sums);
                        limits.Ledger(path, charges, periods, sums);
                    }
                )
                {
                    Answer = SumsAnswer,
                }
            );
        }

        Contenders = contenders;
    }

    public override string Question =>
        $"{rows} rows of CSV ({bytes / 1e6:F0} MB) parsed and summed by {Charges} charge codes and {Periods} periods.";

    public override string Data =>
        "Rows document,line,charge,period,cost_element,amount drawn from the seed, charges and periods in no order. "
        + "The file is in the system's cache. Inside the clock: opening it to the sums; for the import also checking "
        + "every cell and rule and keeping every row, not writing the database.";

    public override IReadOnlyList<Contender> Contenders { get; }

    protected override void Dispose(bool disposing)
    {
        duck.Dispose();
        base.Dispose(disposing);
    }

    private static byte[] Codes(IEnumerable<string> codes) =>
        Encoding.UTF8.GetBytes(string.Concat(codes.Select(code => code + '\0')));

    private string SumsAnswer() => Checksum.Of(sums);

    private unsafe void CountLines()
    {
        using var map = MemoryMappedFile.CreateFromFile(path, FileMode.Open);
        using var view = map.CreateViewAccessor(0, bytes, MemoryMappedFileAccess.Read);
        byte* start = null;
        view.SafeMemoryMappedViewHandle.AcquirePointer(ref start);
        try
        {
            var lines = new ReadOnlySpan<byte>(start, checked((int)bytes)).Count((byte)'\n');
            if (lines != rows + 1)
            {
                throw new InvalidOperationException($"{lines} line ends were found.");
            }
        }
        finally
        {
            view.SafeMemoryMappedViewHandle.ReleasePointer();
        }
    }

    private void ReadCells()
    {
        using var reader = Sep.New(',').Reader().FromFile(path);
        var characters = 0L;
        foreach (var row in reader)
        {
            for (var column = 0; column < row.ColCount; column++)
            {
                characters += row[column].Span.Length;
            }
        }

        GC.KeepAlive(characters);
    }

    private void ReadAndSum()
    {
        Array.Clear(sums);
        var errors = new InputErrors();
        using var reader = TableSource.Find([path], errors)[0].Open(errors)!;
        var charge = Place(reader, "charge");
        var period = Place(reader, "period");
        var amount = Place(reader, "amount");
        var elements = project[ElementTable.Definition];
        var periods = project[Core.Foundation.Time.PeriodTable.Definition];
        while (reader.Read())
        {
            var package = project.Tree.PackageOfId(
                elements.Ids[elements.RowOfCode(reader[charge])]
            );
            sums[(package * Periods) + periods.RowOfCode(reader[period])] += Cents(reader[amount]);
        }

        if (errors.Any)
        {
            throw new InvalidOperationException("The file was not taken.");
        }
    }

    private static int Place(RowReader reader, string heading) =>
        reader.Header.ToList().IndexOf(heading);

    private static long Cents(ReadOnlySpan<char> text)
    {
        var cents = 0L;
        foreach (var mark in text)
        {
            if (char.IsAsciiDigit(mark))
            {
                cents = (cents * 10) + (mark - '0');
            }
        }

        return text[0] == '-' ? -cents : cents;
    }

    private void Import()
    {
        var result = Importer.Run(project, [path], replace: false);
        if (result.Errors.Any)
        {
            throw new InvalidOperationException("The file was not taken.");
        }

        var actual = ActualCost
            .Of(
                result.Project.Baseline,
                result.Project[AccountTable.Definition],
                result.Project.Periods,
                result.Project[ActualTable.Definition],
                accrualsReversed: true
            )
            .Packages;
        Array.Clear(sums);
        for (var series = 0; series < actual.Count; series++)
        {
            actual.AddChangesTo(
                series,
                sums.AsSpan(series / CostElements.Count * Periods, Periods)
            );
        }
    }

    private void SplitLines()
    {
        Array.Clear(sums);
        var charges = Enumerable
            .Range(0, Charges)
            .ToDictionary(PackageProject.CodeOf, StringComparer.Ordinal);
        var periods = Enumerable
            .Range(0, Periods)
            .ToDictionary(PackageProject.PeriodCode, StringComparer.Ordinal);
        foreach (var line in File.ReadLines(path).Skip(1))
        {
            var cells = line.Split(',');
            sums[(charges[cells[2]] * Periods) + periods[cells[3]]] += (long)(
                decimal.Parse(cells[5], CultureInfo.InvariantCulture) * 100
            );
        }
    }

    private void RunDuck(int threads) =>
        Execute(
            $$"""
            SET threads = {{threads.ToString(CultureInfo.InvariantCulture)}};
            CREATE OR REPLACE TABLE sums AS
            SELECT charge, period, sum(amount) AS amount
            FROM read_csv('{{path}}', header = true, columns = {
                'document': 'VARCHAR', 'line': 'VARCHAR', 'charge': 'VARCHAR', 'period': 'VARCHAR',
                'cost_element': 'VARCHAR', 'amount': 'DECIMAL(18,2)'})
            GROUP BY charge, period
            """
        );

    private string DuckAnswer()
    {
        using var command = duck.CreateCommand();
        command.CommandText =
            "SELECT "
            + Checksum.Sql(
                "CAST(amount * 100 AS HUGEINT)",
                $"(CAST(substr(charge, 2) AS BIGINT) * {Periods} + (CAST(substr(period, 1, 4) AS BIGINT) - 2020) * 12 "
                    + "+ CAST(substr(period, 6) AS BIGINT) - 1)"
            )
            + " FROM sums";
        return (string)command.ExecuteScalar()!;
    }

    private void Execute(string sql)
    {
        using var command = duck.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
