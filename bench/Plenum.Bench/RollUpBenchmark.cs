using System.Globalization;
using DuckDB.NET.Data;
using Microsoft.Data.Sqlite;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core.Breakdown;

namespace Plenum.Bench;

/// <summary>Four measures, their totals at every element of a breakdown.</summary>
internal sealed class RollUpBenchmark : Benchmark
{
    private const int SqliteIsPartOf = 10;

    private readonly Breakdown all;
    private readonly Breakdown part;
    private readonly long[][] totals;
    private readonly Limit limit;
    private readonly DuckDBConnection duck;
    private readonly SqliteConnection sqlite;

    public RollUpBenchmark(Setting setting)
    {
        all = new Breakdown(setting.Size(1_000_000), setting.Seed);
        part = new Breakdown(setting.Size(1_000_000 / SqliteIsPartOf), setting.Seed);
        totals = NewColumns(all.Count);
        limit = new Limit(all, totals);
        duck = FilledDuck(all);
        sqlite = FilledSqlite(part);
        List<Contender> contenders =
        [
            new("plain copy of the columns", Role.Floor, CopyColumns),
            new("bare loop in C#, unchecked", Role.Limit, limit.Run) { Answer = AnswerOf(totals) },
            new("Plenum, four measures in one walk", Role.Plenum, FourAtOnce)
            {
                Answer = AnswerOf(totals),
            },
            new("Plenum, a walk for each measure", Role.Plenum, OneByOne)
            {
                Answer = AnswerOf(totals),
            },
            new("DuckDB, running sums, both cores", Role.Tool, RunDuck) { Answer = DuckAnswer },
            new(
                $"SQLite, recursive, {part.Count} elements; ratios times {SqliteIsPartOf}",
                Role.Tool,
                RunSqlite
            )
            {
                Answer = SqliteAnswer,
                PartOf = SqliteIsPartOf,
            },
        ];
        if (setting.Limits is { } limits)
        {
            contenders.Insert(
                1,
                new(
                    "loop in C++",
                    Role.Limit,
                    () => limits.RollUp(all.Level, all.Depth, all.Own, totals)
                )
                {
                    Answer = AnswerOf(totals),
                }
            );
        }

        var partTotals = NewColumns(part.Count);
        contenders.Add(
            new(
                $"Plenum, {part.Count} elements; ratios times {SqliteIsPartOf}",
                Role.Plenum,
                () => RollUp.Totals(part.Level, part.Depth, part.Own, partTotals)
            )
            {
                Answer = AnswerOf(partTotals),
                PartOf = SqliteIsPartOf,
            }
        );
        Contenders = contenders;
    }

    public override string Question =>
        $"Totals of {Breakdown.Measures} measures at every one of {all.Count} elements.";

    public override string Data =>
        $"A breakdown drawn from the seed, {all.Depth} levels deep, in depth-first order. Inside the clock: from "
        + "columns in memory to columns that are there already; in the databases, from a table to a new table.";

    public override IReadOnlyList<Contender> Contenders { get; }

    protected override void Dispose(bool disposing)
    {
        duck.Dispose();
        sqlite.Dispose();
        base.Dispose(disposing);
    }

    private static long[][] NewColumns(int count) =>
        [.. Enumerable.Range(0, Breakdown.Measures).Select(_ => new long[count])];

    private static Func<string> AnswerOf(long[][] columns) => () => Checksum.Of(columns);

    private void CopyColumns()
    {
        for (var measure = 0; measure < Breakdown.Measures; measure++)
        {
            all.Own[measure].CopyTo(totals[measure], 0);
        }
    }

    private void FourAtOnce() => RollUp.Totals(all.Level, all.Depth, all.Own, totals);

    private void OneByOne()
    {
        for (var measure = 0; measure < Breakdown.Measures; measure++)
        {
            RollUp.Totals(
                all.Level,
                all.Depth,
                all.Own[measure].AsSpan(),
                totals[measure].AsSpan()
            );
        }
    }

    private void RunDuck() =>
        Execute(
            duck,
            """
            CREATE OR REPLACE TABLE totals AS
            WITH running AS (
                SELECT place, subtree_end, m0, m1, m2, m3,
                    sum(m0) OVER w AS r0, sum(m1) OVER w AS r1, sum(m2) OVER w AS r2, sum(m3) OVER w AS r3
                FROM elements WINDOW w AS (ORDER BY place ROWS UNBOUNDED PRECEDING)
            )
            SELECT a.place, CAST(b.r0 - a.r0 + a.m0 AS BIGINT) AS t0, CAST(b.r1 - a.r1 + a.m1 AS BIGINT) AS t1,
                CAST(b.r2 - a.r2 + a.m2 AS BIGINT) AS t2, CAST(b.r3 - a.r3 + a.m3 AS BIGINT) AS t3
            FROM running a JOIN running b ON b.place = a.subtree_end - 1
            """
        );

    private string DuckAnswer() => AnswerIn(duck);

    private void RunSqlite() =>
        Execute(
            sqlite,
            """
            DROP TABLE IF EXISTS totals;
            CREATE TABLE totals AS
            WITH RECURSIVE above(place, m0, m1, m2, m3) AS (
                SELECT place, m0, m1, m2, m3 FROM elements
                UNION ALL
                SELECT e.parent, a.m0, a.m1, a.m2, a.m3
                FROM above a JOIN elements e ON e.place = a.place WHERE e.parent >= 0
            )
            SELECT place, sum(m0) AS t0, sum(m1) AS t1, sum(m2) AS t2, sum(m3) AS t3 FROM above GROUP BY place
            """
        );

    private string SqliteAnswer() => AnswerIn(sqlite);

    private static string AnswerIn(System.Data.Common.DbConnection database)
    {
        var sums = string.Join(
            ", ",
            Enumerable
                .Range(0, Breakdown.Measures)
                .Select(measure =>
                    Checksum.Sql(
                        string.Create(CultureInfo.InvariantCulture, $"t{measure}"),
                        "place"
                    )
                )
        );
        using var command = database.CreateCommand();
        command.CommandText = $"SELECT {sums} FROM totals";
        using var reader = command.ExecuteReader();
        reader.Read();
        return string.Join(
            ' ',
            Enumerable.Range(0, Breakdown.Measures).Select(column => reader.GetString(column))
        );
    }

    private static void Execute(System.Data.Common.DbConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static DuckDBConnection FilledDuck(Breakdown breakdown)
    {
        var database = new DuckDBConnection("Data Source=:memory:");
        database.Open();
        Execute(
            database,
            "CREATE TABLE elements (place BIGINT, subtree_end BIGINT, m0 BIGINT, m1 BIGINT, m2 BIGINT, m3 BIGINT)"
        );
        using var appender = database.CreateAppender("elements");
        for (var row = 0; row < breakdown.Count; row++)
        {
            var record = appender.CreateRow();
            record.AppendValue((long)row).AppendValue((long)breakdown.SubtreeEnd[row]);
            foreach (var measure in breakdown.Own)
            {
                record.AppendValue(measure[row]);
            }

            record.EndRow();
        }

        return database;
    }

    private static SqliteConnection FilledSqlite(Breakdown breakdown)
    {
        var database = new SqliteConnection("Data Source=:memory:");
        database.Open();
        Execute(
            database,
            "CREATE TABLE elements (place INTEGER PRIMARY KEY, parent INTEGER, m0, m1, m2, m3); BEGIN"
        );
        using var insert = database.CreateCommand();
        insert.CommandText = "INSERT INTO elements VALUES ($0, $1, $2, $3, $4, $5)";
        var values = Enumerable
            .Range(0, 2 + Breakdown.Measures)
            .Select(column =>
                insert.Parameters.Add(
                    string.Create(CultureInfo.InvariantCulture, $"${column}"),
                    SqliteType.Integer
                )
            )
            .ToArray();
        for (var row = 0; row < breakdown.Count; row++)
        {
            values[0].Value = row;
            values[1].Value = breakdown.Parent[row];
            for (var measure = 0; measure < Breakdown.Measures; measure++)
            {
                values[2 + measure].Value = breakdown.Own[measure][row];
            }

            insert.ExecuteNonQuery();
        }

        Execute(database, "COMMIT");
        return database;
    }

    /// <summary>The walk over plain memory, without checks of any kind.</summary>
    private sealed unsafe class Limit(Breakdown breakdown, long[][] totals)
    {
        private readonly long[] below = new long[(breakdown.Depth + 2) * Breakdown.Measures];

        public void Run()
        {
            Array.Clear(below);
            fixed (int* level = breakdown.Level)
            {
                fixed (
                    long* sums = below,
                        own0 = breakdown.Own[0],
                        own1 = breakdown.Own[1],
                        own2 = breakdown.Own[2],
                        own3 = breakdown.Own[3],
                        totals0 = totals[0],
                        totals1 = totals[1],
                        totals2 = totals[2],
                        totals3 = totals[3]
                )
                {
                    unchecked // a loop to compare with: the data fit
                    {
                        for (var row = breakdown.Count - 1; row >= 0; row--)
                        {
                            var at = sums + (level[row] * Breakdown.Measures);
                            var under = at + Breakdown.Measures;
                            var total0 = own0[row] + under[0];
                            var total1 = own1[row] + under[1];
                            var total2 = own2[row] + under[2];
                            var total3 = own3[row] + under[3];
                            under[0] = under[1] = under[2] = under[3] = 0;
                            at[0] += total0;
                            at[1] += total1;
                            at[2] += total2;
                            at[3] += total3;
                            totals0[row] = total0;
                            totals1[row] = total1;
                            totals2[row] = total2;
                            totals3[row] = total3;
                        }
                    }
                }
            }
        }
    }
}
