using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;
using Plenum.Bench.Harness;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Samples;
using Plenum.Workbench;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Bench;

/// <summary>One edit of a large project, from the key to what the screen is told; a paste, and taking it back.</summary>
internal sealed class EditBenchmark : Benchmark
{
    private const int PastedRows = 10_000;
    private const string Person = "planner";

    private readonly OpenProject project;
    private readonly SqliteConnection sqlite;
    private readonly Random random;
    private readonly string pasted;
    private readonly Column[] copied;
    private readonly int elements;
    private int edits;
    private OutlineAnswer? outline;
    private object? kept;

    public EditBenchmark(Setting setting)
    {
        random = new Random((int)(setting.Seed % int.MaxValue));
        SyntheticProject.Write(setting.Folder, setting.Size(453_000), setting.Seed);
        var file = Path.Combine(setting.Folder, "edited.plenum");
        OpenProject.Create(file, Person, TimeProvider.System);
        project = OpenProject.Open(file, TimeProvider.System);
        var import = project.Import(new ImportCommand([setting.Folder], false, false, Person));
        if (import.Errors.Any)
        {
            throw new InvalidOperationException(import.Errors.Items[0].ToString());
        }

        Tell();
        elements = project.Current.Tree.Count;
        pasted = List();
        var table = project.Current[ElementTable.Definition];
        copied = [.. ElementTable.Definition.Columns.Select(column => table[column])];
        sqlite = Filled(Path.Combine(setting.Folder, "tool.db"), project.Current);
        Contenders =
        [
            new("copy of every column of the elements", Role.Floor, CopyColumns),
            new(
                "one row made to last by the embedded database, no totals",
                Role.Floor,
                WriteOneRow
            ),
            Edit("rename", () => Write(ElementTable.Name, $"Renamed {++edits}")),
            Edit("allotted money", () => Write(ElementTable.Allotted, $"{++edits}")),
            Edit("budget of a package", Budget),
            Edit("new sister", () => new AddElementCommand(Parent(), 0, $"New {++edits}")),
            Edit("one level down", LevelDown),
            Edit("remove a package", () => new RemoveElementsCommand([Unreported()])),
            new($"Plenum: paste of {PastedRows} rows", Role.Plenum, Paste) { After = Back },
            new($"Plenum: taking back the paste of {PastedRows} rows", Role.Plenum, Back)
            {
                Before = Paste,
                After = static () => { }, // it can be done once only
            },
            new("Plenum: outline of three levels, first lines drawn", Role.Plenum, FirstPaint),
            new("Plenum: outline, 40 lines further down", Role.Plenum, Scroll)
            {
                Before = () => outline ??= Outline(),
            },
            new(
                "SQLite: allotted money, and totals of all above it by recursive query",
                Role.Tool,
                ToolEdit
            ),
        ];
    }

    public override string Question =>
        $"One edit of a project of {elements} elements and {project.Current.Tree.PackageCount} packages: checked, written "
        + "with its audit record, totals carried up, the pages' sums made.";

    public override string Data =>
        "The synthetic project of the seed, in a file. Inside the clock: from the command to the new value with totals, hours, "
        + "baseline and accounts, and the transaction on disk. Every edit is taken back outside the clock. The audit follows "
        + "later, on another thread, and is not in it. SQLite: the row changed, then the sums of all elements above it, each "
        + "over its whole subtree, in one transaction.";

    public override IReadOnlyList<Contender> Contenders { get; }

    protected override void Dispose(bool disposing)
    {
        project.Dispose();
        sqlite.Dispose();
        base.Dispose(disposing);
    }

    private Contender Edit(string name, Func<EditCommand> command)
    {
        EditCommand next = null!;
        return new($"Plenum: {name}", Role.Plenum, () => Do(next))
        {
            Before = () => next = command(),
            After = Back,
        };
    }

    private void Do(EditCommand command)
    {
        project.Edit(command, Person);
        Tell();
    }

    private void Back()
    {
        project.Undo(Person);
        Tell();
    }

    /// <summary>What every page asks for at once.</summary>
    private void Tell() =>
        kept = (
            project.Current.Totals,
            project.Current.HourTotals,
            project.Current.Baseline,
            project.Current.Placement
        );

    private void Paste() =>
        Do(new PasteListCommand(project.Current.Tree.Elements.Ids[0], 0, pasted));

    private OutlineAnswer Outline()
    {
        var tree = project.Current.Tree;
        var open = ImmutableHashSet.CreateBuilder<int>();
        for (var row = 0; row < tree.Count; row++)
        {
            if (tree.Level[row] < 3)
            {
                open.Add(tree.Elements.Ids[row]);
            }
        }

        return new OutlineQuestion(open.ToImmutable()).Ask(project.Current);
    }

    private void FirstPaint() => kept = Outline().Window(0, 40);

    private void Scroll() => kept = outline!.Window(random.Next(outline.Count), 40);

    private SetCellCommand Write(ColumnDefinition column, string text)
    {
        var table = project.Current[ElementTable.Definition];
        var row = random.Next(table.Count);
        return new(
            new CellText(
                "elements",
                table.Ids[row],
                column.Name,
                text,
                new ProjectText(project.Current).Of(table, row, column)
            )
        );
    }

    private SetCellCommand Budget()
    {
        var budget = project.Current[BudgetTable.Definition];
        var row = random.Next(budget.Count);
        return new(
            new CellText(
                "budget",
                budget.Ids[row],
                "amount",
                (++edits).ToString(CultureInfo.InvariantCulture),
                new ProjectText(project.Current).Of(budget, row, BudgetTable.Amount)
            )
        );
    }

    private int Parent()
    {
        var tree = project.Current.Tree;
        while (true)
        {
            var row = random.Next(tree.Count);
            if (tree.HasChildren(row))
            {
                return tree.Elements.Ids[row];
            }
        }
    }

    private StepElementCommand LevelDown()
    {
        var tree = project.Current.Tree;
        while (true)
        {
            var row = random.Next(1, tree.Count);
            var before = row - 1;
            while (before > 0 && tree.Level[before] > tree.Level[row])
            {
                before = tree.Parent[before];
            }

            if (
                before > 0
                && tree.Level[before] == tree.Level[row]
                && tree.HasChildren(before)
                && tree.HasChildren(row)
            )
            {
                return new StepElementCommand(tree.Elements.Ids[row], Step.LevelDown);
            }
        }
    }

    private int Unreported()
    {
        var current = project.Current;
        HashSet<int> reported =
        [
            .. current[Core.Status.StatusTable.Definition]
                .Ints(Core.Status.StatusTable.Package)
                .ToArray(),
            .. current[Core.Status.ActualTable.Definition]
                .Ints(Core.Status.ActualTable.Charge)
                .ToArray()
                .Select(charge => Core.Status.ActualTable.Charge.DecodeReference(charge).Id),
            .. current[Core.Status.CommitmentTable.Definition]
                .Ints(Core.Status.CommitmentTable.Package)
                .ToArray(),
        ];
        while (true)
        {
            var package = random.Next(current.Tree.PackageCount);
            var id = current.Tree.Elements.Ids[current.Tree.PackageRows[package]];
            if (!reported.Contains(id))
            {
                return id;
            }
        }
    }

    private static string List()
    {
        var text = new StringBuilder("Pasted branch\n");
        for (var row = 1; row < PastedRows; row++)
        {
            text.Append(row % 10 == 1 ? "\t" : "\t\t")
                .Append("Pasted part ")
                .Append(row)
                .Append('\n');
        }

        return text.ToString();
    }

    private void CopyColumns()
    {
        var bytes = 0L;
        foreach (var column in copied)
        {
            var copy = column.ToBuilder(1);
            bytes += copy.Count;
        }

        kept = bytes;
    }

    private void WriteOneRow()
    {
        using var command = sqlite.CreateCommand();
        command.CommandText = "UPDATE element SET allotted = $a WHERE id = $id";
        command.Parameters.AddWithValue("$a", ++edits);
        command.Parameters.AddWithValue("$id", copied.Length + edits);
        command.ExecuteNonQuery();
    }

    private void ToolEdit()
    {
        using var transaction = sqlite.BeginTransaction();
        using var command = sqlite.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = """
            UPDATE element SET allotted = $a WHERE id = $id;
            WITH RECURSIVE
              up(id) AS (
                SELECT $id UNION ALL SELECT e.parent FROM element e JOIN up ON e.id = up.id WHERE e.parent IS NOT NULL
              ),
              below(top, id) AS (
                SELECT id, id FROM up UNION ALL SELECT b.top, e.id FROM element e JOIN below b ON e.parent = b.id
              )
            INSERT OR REPLACE INTO total SELECT b.top, sum(e.budget) FROM below b JOIN element e ON e.id = b.id GROUP BY b.top;
            """;
        command.Parameters.AddWithValue("$a", ++edits);
        var table = project.Current[ElementTable.Definition];
        command.Parameters.AddWithValue("$id", table.Ids[random.Next(table.Count)]);
        command.ExecuteNonQuery();
        transaction.Commit();
    }

    private static SqliteConnection Filled(string path, Project project)
    {
        var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var make = connection.CreateCommand();
        make.CommandText = """
            PRAGMA synchronous = EXTRA;
            CREATE TABLE element (id INTEGER PRIMARY KEY, parent INTEGER, name TEXT, allotted INTEGER, budget INTEGER);
            CREATE TABLE total (id INTEGER PRIMARY KEY, budget INTEGER);
            """;
        make.ExecuteNonQuery();
        using var transaction = connection.BeginTransaction();
        using var insert = connection.CreateCommand();
        insert.Transaction = transaction;
        insert.CommandText = "INSERT INTO element VALUES ($id, $parent, $name, $allotted, $budget)";
        foreach (var name in (string[])["$id", "$parent", "$name", "$allotted", "$budget"])
        {
            insert.Parameters.Add(new SqliteParameter(name, null));
        }

        var tree = project.Tree;
        for (var row = 0; row < tree.Count; row++)
        {
            var package = tree.PackageOfRow[row];
            insert.Parameters[0].Value = tree.Elements.Ids[row];
            insert.Parameters[1].Value =
                tree.Parent[row] < 0 ? DBNull.Value : tree.Elements.Ids[tree.Parent[row]];
            insert.Parameters[2].Value = tree.Name(row);
            insert.Parameters[3].Value =
                project.Totals.Allotted[row] is var allotted && Cell.IsGiven(allotted)
                    ? allotted
                    : DBNull.Value;
            insert.Parameters[4].Value = package < 0 ? 0L : project.Baseline.TotalBudget[package];
            insert.ExecuteNonQuery();
        }

        transaction.Commit();
        using var index = connection.CreateCommand();
        index.CommandText = "CREATE INDEX element_parent ON element (parent)";
        index.ExecuteNonQuery();
        return connection;
    }
}
