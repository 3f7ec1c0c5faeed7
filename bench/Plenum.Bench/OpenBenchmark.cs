using System.Data.Common;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using DuckDB.NET.Data;
using Microsoft.Data.Sqlite;
using Plenum.Bench.Data;
using Plenum.Bench.Harness;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Store;

namespace Plenum.Bench;

/// <summary>A project opened from its file, and twelve columns of its packages brought into memory.</summary>
internal sealed class OpenBenchmark : Benchmark
{
    private const string Elements =
        "SELECT code, parent_id, \"order\", name FROM elements ORDER BY id";
    private const string Packages =
        "SELECT package_id, technique, spread, start, finish FROM packages ORDER BY id";
    private const string Budgets =
        "SELECT cost_element, amount_minor, hours_hundredths FROM budget ORDER BY id";

    private readonly string path;
    private readonly string rawPath;
    private readonly string duckPath;
    private readonly int packages;
    private readonly int elements;
    private ProjectFile? file;
    private string answer = "";

    public OpenBenchmark(Setting setting)
    {
        var data = new PackageProject(
            setting.Size(500_000),
            setting.Size(5_000),
            periods: 120,
            setting.Seed
        );
        var project = PackageProject.Of([
            .. data.Frame(),
            data.PackageRows(_ => TechniqueCodec.Percent, package => package % 4),
            data.BudgetRows(mostCostElements: 1),
        ]);
        packages = data.Packages;
        elements = project[ElementTable.Definition].Count;
        path = Path.Combine(setting.Folder, "project.plenum");
        rawPath = Path.Combine(setting.Folder, "columns.raw");
        duckPath = Path.Combine(setting.Folder, "project.duckdb");
        Store(project);
        WriteRaw(project);
        CopyToDuck();
        Contenders =
        [
            new("columns read as they lie in memory, texts as bytes", Role.Floor, ReadRaw),
            new("the same, texts as strings", Role.Limit, ReadRawStrings) { Answer = Answer },
            new("Plenum, column cache valid", Role.Plenum, Open)
            {
                Before = KeepCache,
                Answer = () => AnswerFrom(cache: true),
                After = Close,
            },
            new("Plenum, from the tables", Role.Plenum, Open)
            {
                Before = DropCache,
                Answer = () => AnswerFrom(cache: false),
                After = Close,
            },
            new("SQLite, the same file through its ordinary reader", Role.Tool, ReadSqlite)
            {
                Answer = Answer,
            },
            new("DuckDB, its ordinary reader", Role.Tool, ReadDuck) { Answer = Answer },
        ];
    }

    public override string Question =>
        $"A project of {packages} packages opened: twelve columns ({elements} elements x 4, {packages} packages x 5, "
        + $"{packages} budgets x 3) in memory.";

    public override string Data =>
        "Files are in the system's cache. Inside the clock: opening the file to the last of the twelve columns as "
        + "arrays. Plenum also checks that the cache belongs to this state of the file, and from the tables reads and "
        + "checks every column and every reference; the readers only read.";

    public override IReadOnlyList<Contender> Contenders { get; }

    private string Answer() => answer;

    private void Store(Project project)
    {
        using var made = ProjectFile.Create(
            path,
            new AuditEntry("bench", "new", null, null),
            TimeProvider.System
        );
        made.Commit(
            Project.Empty,
            project,
            [
                .. project
                    .Tables.Where(table => table.Count > 0)
                    .Select(table => new TableChange(table.Definition, table.Ids, [], [])),
            ],
            new AuditEntry("bench", "import", null, null)
        );
    }

    private void KeepCache()
    {
        using var opened = ProjectFile.Open(path);
        opened.Load();
    }

    /// <summary>What lies beside the project file is an aid to it.</summary>
    private void DropCache()
    {
        foreach (var beside in Directory.GetFiles(Path.GetDirectoryName(path)!, "project.plenum*"))
        {
            if (beside != path)
            {
                File.Delete(beside);
            }
        }
    }

    private void Open()
    {
        file = ProjectFile.Open(path);
        var project = file.Load();
        var (tree, plan, budget) = (
            project[ElementTable.Definition],
            project[PackageTable.Definition],
            project[BudgetTable.Definition]
        );
        answer = Sum(
            tree.Texts(ElementTable.Code),
            tree.Texts(ElementTable.Name),
            tree.Ints(ElementTable.Parent),
            tree.Ints(ElementTable.Order),
            plan.Ints(PackageTable.Package),
            plan.Ints(PackageTable.Technique),
            plan.Ints(PackageTable.Spread),
            plan.Ints(PackageTable.Start),
            plan.Ints(PackageTable.Finish),
            budget.Ints(BudgetTable.CostElement),
            budget.Longs(BudgetTable.Amount),
            budget.Longs(BudgetTable.Hours)
        );
    }

    private string AnswerFrom(bool cache) =>
        file!.LoadedFromCache == cache
            ? answer
            : throw new InvalidOperationException(
                cache ? "The column cache was not used." : "The tables were not read."
            );

    private void Close()
    {
        file!.Dispose();
        file = null;
    }

    /// <summary>Number of cells, and one cell in a thousand of each column.</summary>
    private static string Sum(
        ReadOnlySpan<string?> codes,
        ReadOnlySpan<string?> names,
        ReadOnlySpan<int> parents,
        ReadOnlySpan<int> orders,
        ReadOnlySpan<int> package,
        ReadOnlySpan<int> technique,
        ReadOnlySpan<int> spread,
        ReadOnlySpan<int> start,
        ReadOnlySpan<int> finish,
        ReadOnlySpan<int> costElement,
        ReadOnlySpan<long> amount,
        ReadOnlySpan<long> hours
    )
    {
        var sum = new HashCode();
        for (var row = 0; row < codes.Length; row += 1_000)
        {
            sum.AddBytes(MemoryMarshal.AsBytes(codes[row].AsSpan()));
            sum.AddBytes(MemoryMarshal.AsBytes(names[row].AsSpan()));
            sum.Add(HashCode.Combine(parents[row], orders[row]));
        }

        for (var row = 0; row < package.Length; row += 1_000)
        {
            sum.Add(HashCode.Combine(package[row], technique[row], spread[row]));
            sum.Add(HashCode.Combine(start[row], finish[row]));
            sum.Add(HashCode.Combine(costElement[row], amount[row], hours[row]));
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{codes.Length} {package.Length} {hours.Length} {sum.ToHashCode()}"
        );
    }

    private void WriteRaw(Project project)
    {
        using var raw = new BinaryWriter(File.Create(rawPath));
        var (tree, plan, budget) = (
            project[ElementTable.Definition],
            project[PackageTable.Definition],
            project[BudgetTable.Definition]
        );
        WriteTexts(raw, tree.Texts(ElementTable.Code));
        WriteTexts(raw, tree.Texts(ElementTable.Name));
        Write(raw, tree.Ints(ElementTable.Parent));
        Write(raw, tree.Ints(ElementTable.Order));
        Write(raw, plan.Ints(PackageTable.Package));
        Write(raw, plan.Ints(PackageTable.Technique));
        Write(raw, plan.Ints(PackageTable.Spread));
        Write(raw, plan.Ints(PackageTable.Start));
        Write(raw, plan.Ints(PackageTable.Finish));
        Write(raw, budget.Ints(BudgetTable.CostElement));
        Write(raw, budget.Longs(BudgetTable.Amount));
        Write(raw, budget.Longs(BudgetTable.Hours));
    }

    private static void WriteTexts(BinaryWriter raw, ReadOnlySpan<string?> texts)
    {
        var ends = new int[texts.Length];
        using var bytes = new MemoryStream();
        for (var row = 0; row < ends.Length; row++)
        {
            bytes.Write(Encoding.UTF8.GetBytes(texts[row]!));
            ends[row] = (int)bytes.Length;
        }

        Write<int>(raw, ends);
        Write<byte>(raw, bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    private static void Write<T>(BinaryWriter raw, ReadOnlySpan<T> values)
        where T : unmanaged
    {
        raw.Write(values.Length);
        raw.Write(MemoryMarshal.AsBytes(values));
    }

    private void ReadRaw() => ReadRaw(asStrings: false);

    private void ReadRawStrings() => ReadRaw(asStrings: true);

    private void ReadRaw(bool asStrings)
    {
        using var raw = new BinaryReader(
            new FileStream(rawPath, FileMode.Open, FileAccess.Read, FileShare.Read, 0)
        );
        var codes = Texts(raw, asStrings);
        var names = Texts(raw, asStrings);
        var ints = new int[8][];
        for (var column = 0; column < ints.Length; column++)
        {
            ints[column] = Numbers<int>(raw);
        }

        var (amount, hours) = (Numbers<long>(raw), Numbers<long>(raw));
        if (asStrings)
        {
            answer = Sum(
                codes,
                names,
                ints[0],
                ints[1],
                ints[2],
                ints[3],
                ints[4],
                ints[5],
                ints[6],
                ints[7],
                amount,
                hours
            );
        }
    }

    private static string[] Texts(BinaryReader raw, bool asStrings)
    {
        var ends = Numbers<int>(raw);
        var bytes = Numbers<byte>(raw);
        if (!asStrings)
        {
            return [];
        }

        var texts = new string[ends.Length];
        var start = 0;
        for (var row = 0; row < texts.Length; row++)
        {
            texts[row] = Encoding.UTF8.GetString(bytes, start, ends[row] - start);
            start = ends[row];
        }

        return texts;
    }

    private static T[] Numbers<T>(BinaryReader raw)
        where T : unmanaged
    {
        var values = GC.AllocateUninitializedArray<T>(raw.ReadInt32());
        raw.BaseStream.ReadExactly(MemoryMarshal.AsBytes(values.AsSpan()));
        return values;
    }

    private void ReadSqlite()
    {
        using var database = new SqliteConnection(
            $"Data Source={path};Mode=ReadOnly;Pooling=False"
        );
        database.Open();
        ReadTables(database);
    }

    private void ReadDuck()
    {
        using var database = new DuckDBConnection($"Data Source={duckPath};ACCESS_MODE=READ_ONLY");
        database.Open();
        ReadTables(database);
    }

    private void ReadTables(DbConnection database)
    {
        var (codes, names) = (new string[elements], new string[elements]);
        var (parents, orders) = (new int[elements], new int[elements]);
        Each(
            database,
            Elements,
            (reader, row) =>
            {
                codes[row] = reader.GetString(0);
                parents[row] = reader.IsDBNull(1) ? Cell.NoInt : reader.GetInt32(1);
                orders[row] = reader.IsDBNull(2) ? Cell.NoInt : reader.GetInt32(2);
                names[row] = reader.GetString(3);
            }
        );
        var plan = Enumerable.Range(0, 5).Select(_ => new int[packages]).ToArray();
        Each(
            database,
            Packages,
            (reader, row) =>
            {
                plan[0][row] = reader.GetInt32(0);
                _ = TechniqueCodec.Instance.TryParse(reader.GetString(1), out plan[1][row]);
                _ = PackageTable.Spreads.TryParse(reader.GetString(2), out plan[2][row]);
                plan[3][row] = Day(reader.GetString(3));
                plan[4][row] = Day(reader.GetString(4));
            }
        );
        var costElement = new int[packages];
        var (amount, hours) = (new long[packages], new long[packages]);
        Each(
            database,
            Budgets,
            (reader, row) =>
            {
                _ = CostElements.Words.TryParse(reader.GetString(0), out costElement[row]);
                amount[row] = reader.GetInt64(1);
                hours[row] = reader.GetInt64(2);
            }
        );
        answer = Sum(
            codes,
            names,
            parents,
            orders,
            plan[0],
            plan[1],
            plan[2],
            plan[3],
            plan[4],
            costElement,
            amount,
            hours
        );
    }

    private static int Day(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture).DayNumber;

    private static void Each(DbConnection database, string sql, Action<DbDataReader, int> take)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        for (var row = 0; reader.Read(); row++)
        {
            take(reader, row);
        }
    }

    /// <summary>The same three tables with the same columns in a database of the other kind.</summary>
    private void CopyToDuck()
    {
        using var from = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=False");
        from.Open();
        using var to = new DuckDBConnection($"Data Source={duckPath}");
        to.Open();
        Copy(
            from,
            to,
            "elements",
            "id, code, parent_id, \"order\", name",
            "id INTEGER, code VARCHAR, parent_id INTEGER, \"order\" INTEGER, name VARCHAR"
        );
        Copy(
            from,
            to,
            "packages",
            "id, package_id, technique, spread, start, finish",
            "id INTEGER, package_id INTEGER, technique VARCHAR, spread VARCHAR, start VARCHAR, finish VARCHAR"
        );
        Copy(
            from,
            to,
            "budget",
            "id, cost_element, amount_minor, hours_hundredths",
            "id INTEGER, cost_element VARCHAR, amount_minor BIGINT, hours_hundredths BIGINT"
        );
    }

    private static void Copy(
        SqliteConnection from,
        DuckDBConnection to,
        string table,
        string columns,
        string types
    )
    {
        using var create = to.CreateCommand();
        create.CommandText = $"CREATE TABLE {table} ({types})";
        create.ExecuteNonQuery();
        var isText = types
            .Split(", ")
            .Select(type => type.EndsWith("VARCHAR", StringComparison.Ordinal))
            .ToArray();
        var isLong = types
            .Split(", ")
            .Select(type => type.EndsWith("BIGINT", StringComparison.Ordinal))
            .ToArray();
        using var appender = to.CreateAppender(table);
        Each(
            from,
            $"SELECT {columns} FROM {table} ORDER BY id",
            (reader, _) =>
            {
                var row = appender.CreateRow();
                for (var column = 0; column < isText.Length; column++)
                {
                    if (reader.IsDBNull(column))
                    {
                        row.AppendNullValue();
                    }
                    else if (isText[column])
                    {
                        row.AppendValue(reader.GetString(column));
                    }
                    else if (isLong[column])
                    {
                        row.AppendValue(reader.GetInt64(column));
                    }
                    else
                    {
                        row.AppendValue(reader.GetInt32(column));
                    }
                }

                row.EndRow();
            }
        );
    }
}
