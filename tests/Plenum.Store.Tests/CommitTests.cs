using CsCheck;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Status;
using Plenum.Store.Tests.Support;

namespace Plenum.Store.Tests;

public sealed class CommitTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void After_any_rows_were_added_updated_and_removed_the_file_holds_the_new_value() =>
        Gen.Int[0, 100_000]
            .Sample(
                seed =>
                {
                    using var own = new TemporaryFolder();
                    var before = GeneratedProject.Of(seed);
                    var (after, changes) = Altered(before, seed);
                    using (var file = Projects.With(own.File(), before))
                    {
                        file.Commit(before, after, changes, Projects.Entry);
                        file.CloseWithoutCache();
                    }

                    Assert.Empty(Sql.Texts(own.File(), "PRAGMA foreign_key_check"));
                    Assert.Equal(["ok"], Sql.Texts(own.File(), "PRAGMA integrity_check"));
                    using var reopened = ProjectFile.Open(own.File());
                    SameProject.Assert(after, reopened.Loaded());
                },
                iter: 8
            );

    [Fact]
    public void Codes_may_change_places()
    {
        var before = GeneratedProject.Of(3, 10);
        using var file = Projects.With(folder.File(), before);
        var units = before[UnitTable.Definition];
        var codes = units.Codes.ToArray();
        (codes[0], codes[1], codes[2]) = (codes[1], codes[2], codes[0]);
        var after = before.With([units.With(UnitTable.Unit, new TextColumn(codes))]);
        Projects.Commit(
            file,
            before,
            after,
            new TableChange(UnitTable.Definition, [], [1, 2, 3], [])
        );

        SameProject.Assert(after, Reopened(file));
    }

    [Fact]
    public void A_code_that_a_removed_row_had_may_be_given_to_a_new_one()
    {
        var before = Constructed(("A", 1), ("B", 2));
        using var file = Projects.With(folder.File(), before);
        var after = new Project(Constructed(("B", 2), ("A", 3)).Tables, 2);
        Projects.Commit(file, before, after, new TableChange(UnitTable.Definition, [3], [], [1]));

        SameProject.Assert(after, Reopened(file));
    }

    [Fact]
    public void Many_new_rows_are_indexed_like_few()
    {
        var rows = Enumerable.Range(1, 25_000).Select(id => ($"U{id * 7919 % 25_000}", id));
        var project = Constructed([.. rows]);
        using var file = Projects.With(folder.File(), project);

        SameProject.Assert(project, Reopened(file));
        Assert.Equal(["ok"], Sql.Texts(folder.File(), "PRAGMA integrity_check"));
        Assert.Equal(
            ["units_key"],
            Sql.Texts(
                folder.File(),
                "SELECT name FROM sqlite_schema WHERE type = 'index' AND tbl_name = 'units'"
            )
        );
    }

    [Fact]
    public void A_row_that_refers_to_nothing_is_refused_and_nothing_is_written()
    {
        var before = GeneratedProject.Of(4, 10);
        using var file = Projects.With(folder.File(), before);
        var people = before[PersonTable.Definition];
        var units = people.Ints(PersonTable.Unit).ToArray();
        units[0] = 4_711;
        var after = before.With([people.With(PersonTable.Unit, new NumberColumn<int>(units))]);

        var error = Assert.Throws<ArgumentException>(() =>
            Projects.Commit(
                file,
                before,
                after,
                new TableChange(PersonTable.Definition, [], [1], [])
            )
        );
        Assert.Contains("there is no row 4711 in units", error.Message, StringComparison.Ordinal);
        SameProject.Assert(before, Reopened(file));
    }

    [Fact]
    public void A_row_that_others_refer_to_cannot_be_removed_alone()
    {
        var before = GeneratedProject.Of(4, 10);
        using var file = Projects.With(folder.File(), before);
        var periods = before[Core.Foundation.Time.PeriodTable.Definition];
        var used = before[ActualTable.Definition].Ints(ActualTable.Period)[0];
        var kept = Enumerable.Range(0, periods.Count).Where(row => periods.Ids[row] != used);
        var after = before.With([periods.InOrder([.. kept])]);

        Assert.Throws<ArgumentException>(() =>
            Projects.Commit(
                file,
                before,
                after,
                new TableChange(periods.Definition, [], [], [used])
            )
        );
        SameProject.Assert(before, Reopened(file));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_change_that_names_rows_which_are_not_there_is_refused_whole(int which)
    {
        var before = GeneratedProject.Of(4, 10);
        using var file = Projects.With(folder.File(), before);
        var (after, change) = Projects.WithText(before, ElementTable.Name, 1, "renamed");
        int[][] ids =
        [
            [],
            [],
            [],
        ];
        ids[which] = [99];

        Assert.ThrowsAny<Exception>(() =>
            Projects.Commit(
                file,
                before,
                after,
                change,
                new TableChange(UnitTable.Definition, ids[0], ids[1], ids[2])
            )
        );
        SameProject.Assert(before, Reopened(file));
    }

    [Fact]
    public void A_commit_that_is_cancelled_leaves_the_file_as_it_was()
    {
        var project = Constructed([.. Enumerable.Range(1, 40_000).Select(id => ($"U{id}", id))]);
        using var file = Projects.New(folder.File());
        using var cancel = new CancellationTokenSource();
        var progress = new Told(share =>
        {
            if (share > 0.3)
            {
                cancel.Cancel();
            }
        });

        Assert.ThrowsAny<OperationCanceledException>(() =>
            file.Commit(
                Project.Empty,
                project,
                GeneratedProject.AllAdded(project),
                Projects.Entry,
                progress,
                cancel.Token
            )
        );
        Assert.InRange(progress.Last, 0.3, 0.9);
        SameProject.Assert(Project.Empty, Reopened(file));

        // and the next one goes through
        file.Commit(
            Project.Empty,
            project,
            GeneratedProject.AllAdded(project),
            Projects.Entry,
            progress,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(1, progress.Last);
        SameProject.Assert(project, Reopened(file));
    }

    [Fact]
    public void A_load_that_is_cancelled_leaves_the_state_that_was_loaded_before()
    {
        var project = Constructed([.. Enumerable.Range(1, 40_000).Select(id => ($"U{id}", id))]);
        using var file = Projects.With(folder.File(), project);
        using var cancel = new CancellationTokenSource();
        var progress = new Told(_ => cancel.Cancel());
        Sql.Run(folder.File(), "UPDATE units SET name = 'by hand' WHERE id = 1");

        Assert.ThrowsAny<OperationCanceledException>(() => file.Load(progress, cancel.Token));
        var (after, change) = Projects.WithText(project, UnitTable.Name, 2, "renamed");
        Assert.Equal(
            StoreProblem.Conflict,
            Assert
                .Throws<StoreException>(() => Projects.Commit(file, project, after, change))
                .Problem
        );
    }

    [Fact]
    public void The_file_names_the_currency_and_revision_of_the_project()
    {
        var before = GeneratedProject.Of(4, 10);
        using var file = Projects.With(folder.File(), before);
        Assert.Equal(["KWD|3|1000|1"], Facts());
        file.SetText(before, ProjectTable.Value, 1, "JPY");
        Assert.Equal(["JPY|0|1|2"], Facts());
    }

    [Fact]
    public void The_audit_record_says_who_did_what_when_and_to_how_many_rows()
    {
        var clock = new FixedClock(new DateTimeOffset(2026, 3, 31, 9, 30, 15, 250, TimeSpan.Zero));
        var before = GeneratedProject.Of(4, 10);
        using var file = ProjectFile.Create(folder.File(), Projects.Entry, clock);
        file.Commit(
            Project.Empty,
            before,
            GeneratedProject.AllAdded(before),
            Projects.Entry,
            cancellationToken: TestContext.Current.CancellationToken
        );
        var (after, change) = Projects.WithText(before, ElementTable.Name, 1, "renamed");
        var entry = new AuditEntry("p.1", "rename element", null, "CR-7");
        file.Commit(
            before,
            after,
            [change],
            entry,
            cancellationToken: TestContext.Current.CancellationToken
        );

        var records = file.Audit();
        Assert.Equal([2L, 1, 0], records.Select(record => record.Revision));
        Assert.All(records, record => Assert.Equal(clock.GetUtcNow(), record.At));
        Assert.Equal(entry, records[0].Entry);
        Assert.Equal(
            new Dictionary<string, RowCounts>(StringComparer.Ordinal)
            {
                ["elements"] = new(0, 1, 0),
            },
            records[0].Counts
        );
        Assert.Equal(new RowCounts(10, 0, 0), records[1].Counts["actuals"]);
        Assert.Empty(records[2].Counts);
        Assert.Single(file.Audit(1));
    }

    private static (Project After, List<TableChange> Changes) Altered(Project before, int seed)
    {
        // Rows come and go in tables that nothing refers to; in all tables rows take their cells from another row.
        var random = new Random(seed);
        var referred = ProjectLayout
            .Tables.SelectMany(table => table.Columns)
            .SelectMany(column => column.Targets)
            .ToHashSet(StringComparer.Ordinal);
        List<TableChange> changes = [];
        List<Table> tables = [];
        var donor = GeneratedProject.Of(seed + 1);
        foreach (var table in before.Tables)
        {
            if (
                table.Definition == ElementTable.Definition
                || table.Definition == ProjectTable.Definition
            )
            {
                continue;
            }

            var updated = table.Ids.Where(_ => random.Next(4) == 0).ToArray();
            var mayGo = !referred.Contains(table.Definition.Name);
            var removed = mayGo
                ? table.Ids.Except(updated).Where(_ => random.Next(5) == 0).ToArray()
                : [];
            var added = removed.Length == 0 ? [] : new[] { table.Count + 1 };
            var kept = Enumerable
                .Range(0, table.Count)
                .Where(row => !removed.Contains(table.Ids[row]))
                .ToArray();
            int[] ids = [.. kept.Select(row => table.Ids[row]), .. added];
            var columns = new Column[table.Definition.Columns.Count];
            foreach (var column in table.Definition.Columns)
            {
                // a new row takes the key of one that was removed
                var builder = table[column].Pick(kept).ToBuilder(added.Length);
                if (added.Length > 0)
                {
                    builder.AddFrom(table[column], table.RowOf(removed[0]));
                }

                if (!column.IsKey)
                {
                    foreach (var id in updated)
                    {
                        builder.Overwrite(
                            Array.IndexOf(ids, id),
                            donor[table.Definition][column],
                            id - 1
                        );
                    }
                }

                columns[column.Index] = builder.Build();
            }

            var fields = new Dictionary<string, TextColumn>(StringComparer.Ordinal);
            if (updated.Length > 0)
            {
                var cells = new string?[ids.Length];
                cells[Array.IndexOf(ids, updated[0])] = "only here";
                fields["x_new"] = new TextColumn(cells);
                updated = [.. table.Ids.Except(removed)]; // the old fields are gone in all rows
            }
            else
            {
                foreach (var (heading, field) in table.OwnFields)
                {
                    var builder = field.Pick(kept).ToBuilder(added.Length);
                    Array.ForEach(added, _ => builder.AddMissing());
                    fields[heading] = (TextColumn)builder.Build();
                }

                if (fields.Values.All(field => !field.Values.ContainsAnyExcept((string?)null)))
                {
                    fields.Clear();
                }
            }

            tables.Add(new Table(table.Definition, ids, columns, fields));
            changes.Add(new TableChange(table.Definition, added, updated, removed));
        }

        return (before.With(tables), changes);
    }

    private static Project Constructed(params (string Code, int Id)[] units)
    {
        var table = new Table(
            UnitTable.Definition,
            Array.ConvertAll(units, unit => unit.Id),
            [
                new TextColumn(Array.ConvertAll(units, unit => unit.Code)),
                new TextColumn(new string?[units.Length]),
                new NumberColumn<int>(Array.ConvertAll(units, _ => Cell.NoInt)),
            ]
        );
        return Project.Empty.With([table]);
    }

    private static Project Reopened(ProjectFile file)
    {
        var other = ProjectFile.Open(file.FilePath);
        var loaded = other.Loaded();
        Assert.False(other.LoadedFromCache);
        other.CloseWithoutCache();
        return loaded;
    }

    private List<string> Facts() =>
        Sql.Texts(
            folder.File(),
            """
            SELECT group_concat(value, '|' ORDER BY "key") FROM plenum
            WHERE "key" NOT IN ('project_uid', 'revision_token')
            """
        );

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value)
        {
            Assert.InRange(value, Last > value ? 0 : Last, 1);
            Last = value;
            tell(value);
        }
    }
}
