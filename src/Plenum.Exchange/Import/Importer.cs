using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;

namespace Plenum.Exchange.Import;

/// <summary>What an import makes of a project.</summary>
/// <param name="Project">The project afterwards; the same value if nothing changed or something is wrong.</param>
/// <param name="Changes">What changed, for tables that changed.</param>
/// <param name="Errors">All that is wrong; if there is anything, nothing changes.</param>
public sealed record ImportResult(
    Project Project,
    IReadOnlyList<TableChange> Changes,
    InputErrors Errors
);

/// <summary>
/// Takes tables from files into a project: all of them or nothing. Tables are read in the order in which they refer
/// to each other, whatever the order of the files; every error is reported; what is held in memory is the new rows as
/// columns, not the files. Rows of periods that were closed before are refused unless they change nothing.
/// </summary>
public sealed class Importer
{
    private readonly ImportDraft draft;
    private readonly InputErrors errors;
    private readonly bool replace;
    private readonly List<string> files = [];
    private readonly List<TableChange> changes = [];
    private readonly ImportFaults faults;
    private readonly ClosedPeriods closed;

    private Importer(Project before, InputErrors errors, bool replace)
    {
        draft = new ImportDraft(before);
        this.errors = errors;
        this.replace = replace;
        faults = new ImportFaults(errors, files);
        closed = new ClosedPeriods(before);
    }

    /// <param name="before">The project that is there.</param>
    /// <param name="paths">Files and folders.</param>
    /// <param name="replace">Make the named tables equal to the files.</param>
    /// <param name="progress">Receives the part that is done and what is being read.</param>
    /// <param name="ct">Stops the import; nothing is changed then.</param>
    public static ImportResult Run(
        Project before,
        IEnumerable<string> paths,
        bool replace,
        Action<double, string>? progress = null,
        CancellationToken ct = default
    )
    {
        var found = new InputErrors();
        var sources = TableSource.Find(paths, found);
        return new Importer(before, found, replace).Run(sources, progress ?? ((_, _) => { }), ct);
    }

    private ImportResult Run(
        IReadOnlyList<TableSource> sources,
        Action<double, string> progress,
        CancellationToken ct
    )
    {
        var byTable = ByTable(sources);
        var total = Math.Max(1.0, sources.Sum(source => (double)(source.Bytes ?? 1)));
        var done = 0.0;
        foreach (var definition in ProjectLayout.Tables)
        {
            if (!byTable.TryGetValue(definition, out var own))
            {
                continue;
            }

            Take(
                definition,
                own,
                (part, size, name) => progress((done + (part * size)) / total, name),
                ct
            );
            done += own.Sum(source => (double)(source.Bytes ?? 1));
        }

        progress(1, "checking");
        return Finish();
    }

    private Dictionary<TableDefinition, List<TableSource>> ByTable(
        IReadOnlyList<TableSource> sources
    )
    {
        Dictionary<TableDefinition, List<TableSource>> byTable = [];
        foreach (var source in sources)
        {
            if (ProjectLayout.Find(source.Table) is not { } definition)
            {
                var nearest = NearestWord.Of(
                    source.Table,
                    ProjectLayout.Tables.Select(table => table.Name)
                );
                errors.Add(
                    source.File,
                    "the name of a table",
                    $"no table is called \"{source.Table}\"; "
                        + (
                            nearest is null
                                ? "known are "
                                    + string.Join(
                                        ", ",
                                        ProjectLayout.Tables.Select(table => table.Name)
                                    )
                                : $"did you mean {nearest}?"
                        )
                );
                continue;
            }

            if (!byTable.TryGetValue(definition, out var list))
            {
                byTable[definition] = list = [];
            }

            list.Add(source);
        }

        return byTable;
    }

    private void Take(
        TableDefinition definition,
        List<TableSource> sources,
        Action<double, double, string> progress,
        CancellationToken ct
    )
    {
        var intake = new RowIntake(definition, draft, errors);
        var before = 0.0;
        foreach (var source in sources)
        {
            var size = (double)(source.Bytes ?? 1);
            var start = before;
            using var reader = source.Open(errors);
            files.Add(source.File);
            if (
                reader is null
                || !intake.Read(
                    reader,
                    source.File,
                    files.Count - 1,
                    part => progress((start + (part * size)) / size, size, source.File),
                    ct
                )
            )
            {
                draft.MarkUnclean(definition);
            }

            before += size;
        }

        var count = errors.Count;
        ResolveOwnReferences(intake);
        var result = TableMerge.Into(draft[definition], intake.Incoming, replace, intake.Broken);
        faults.Taken(definition, intake.Incoming, result.Sources);
        ReportRepeated(intake.Incoming, result);
        ReportAltered(intake.Incoming, result);
        var table = Conversions.Apply(
            result.Table,
            result.Change,
            draft.Currency,
            id => intake.Unpriced.Contains(result.Sources.Of(id)),
            faults
        );
        if (errors.Count > count)
        {
            draft.MarkUnclean(definition);
        }

        if (result.Change.Count > 0)
        {
            closed.Check(draft.Before[definition], table, result.Change, faults, errors);
            changes.Add(result.Change);
            draft[definition] = table;
        }

        AfterTaking(definition);
    }

    private void AfterTaking(TableDefinition definition)
    {
        if (definition == ProjectTable.Definition && draft.IsClean(definition))
        {
            // whether the calendar that is named exists is checked when all tables are in
            var settings = ProjectSettings.Read(draft[definition], null, null);
            CheckCurrencyStays(settings);
            draft.Currency = settings.Currency;
        }

        if (definition == ElementTable.Definition && draft.IsClean(definition))
        {
            OrderElements();
        }
    }

    private void CheckCurrencyStays(ProjectSettings settings)
    {
        if (settings.Currency == draft.Before.Settings.Currency)
        {
            return;
        }

        var holder = draft.Before.Tables.FirstOrDefault(table =>
            table.Count > 0 && table.Definition.Columns.Any(column => column.Kind == CellKind.Money)
        );
        if (holder is not null)
        {
            var table = draft[ProjectTable.Definition];
            faults.Add(
                table,
                table.RowOfCode("currency"),
                ProjectTable.Value,
                $"{draft.Before.Settings.Currency}, or a project without amounts",
                $"the project's currency cannot change from {draft.Before.Settings.Currency} to {settings.Currency} "
                    + $"while {holder.Definition.Name} has amounts"
            );
        }
    }

    private void OrderElements()
    {
        var elements = draft[ElementTable.Definition];
        if (!BreakdownRules.CheckTree(elements, faults))
        {
            draft.MarkUnclean(ElementTable.Definition);
            return;
        }

        var parents = ParentRules.ParentRows(elements, ElementTable.Parent);
        var order = DepthFirstOrder.Of(parents, elements.Ints(ElementTable.Order), elements.Codes);
        for (var place = 0; place < order.Length; place++)
        {
            if (order[place] != place)
            {
                draft[ElementTable.Definition] = elements.InOrder(order);
                return;
            }
        }
    }

    /// <summary>Parents and the like: rows of the table itself, known only now that all its rows are read.</summary>
    private void ResolveOwnReferences(RowIntake intake)
    {
        if (intake.OwnReferences.Count == 0)
        {
            return;
        }

        var current = draft[intake.Incoming.Definition];
        var ids = TableMerge.IdsByCode(current, intake.Incoming, intake.Broken);
        foreach (var (row, column, code) in intake.OwnReferences)
        {
            if (ids(code) is var id and > 0)
            {
                ((NumberColumnBuilder<int>)intake.Incoming.Builders[column.Index])[row] =
                    column.EncodeReference(0, id);
            }
            else if (draft.IsClean(intake.Incoming.Definition) || intake.Broken.Count == 0)
            {
                var (source, fileRow) = intake.Incoming.SourceOf(row);
                errors.Add(
                    files[source],
                    fileRow,
                    column.Name,
                    code,
                    CellParser.Expected(column, draft.Currency),
                    CellParser.Unknown(column, code)
                );
            }
        }
    }

    private void ReportRepeated(IncomingRows incoming, MergeResult result)
    {
        foreach (var (row, earlier) in result.Repeated)
        {
            var (source, fileRow) = incoming.SourceOf(row);
            var (earlierSource, earlierRow) = incoming.SourceOf(earlier);
            var keys = string.Join(", ", incoming.Definition.Keys.Select(key => key.Name));
            errors.Add(
                files[source],
                fileRow,
                incoming.Definition.Keys[0].Name,
                KeyText(incoming, row),
                $"a {keys} that no other row has",
                $"the same {keys} stands in {files[earlierSource]}, row {earlierRow}, already: remove one of the two, "
                    + "or correct what tells them apart"
            );
        }
    }

    private void ReportAltered(IncomingRows incoming, MergeResult result)
    {
        foreach (var row in result.Altered)
        {
            var (source, fileRow) = incoming.SourceOf(row);
            errors.Add(
                files[source],
                fileRow,
                incoming.Definition.Keys[0].Name,
                KeyText(incoming, row),
                "the same content as before, or a new document line",
                "this document line is in the ledger already with other content; post the correction as a line of its own"
            );
        }
    }

    private static string KeyText(IncomingRows incoming, int row) =>
        string.Join(
            ", ",
            incoming
                .Definition.Keys.Where(key => key.Storage == ColumnStorage.Text)
                .Select(key => ((TextColumnBuilder)incoming.Builders[key.Index])[row])
        );

    private ImportResult Finish()
    {
        var project = draft.Before.With(draft.Tables);
        faults.Project = project;
        CheckRemovals(project);
        if (draft.IsClean(ProjectTable.Definition))
        {
            _ = ProjectSettings.Read(
                project[ProjectTable.Definition],
                draft.IsClean(CalendarTable.Definition) ? project[CalendarTable.Definition] : null,
                faults
            );
        }

        if (!errors.Any || ReferencesHold(project))
        {
            ProjectRules.Check(project, draft.IsClean, faults);
        }

        return errors.Any || changes.Count == 0
            ? new ImportResult(draft.Before, errors.Any ? [] : changes, errors)
            : new ImportResult(project, changes, errors);
    }

    /// <summary>A row that other rows refer to cannot be removed by replacement.</summary>
    private void CheckRemovals(Project project)
    {
        foreach (var removal in changes.Where(change => change.Removed.Count > 0))
        {
            var before = draft.Before[removal.Definition];
            foreach (
                var users in Dangling(project, removal.Definition)
                    .GroupBy(user => (user.Table, user.Column, user.Id))
            )
            {
                var (table, column, id) = users.Key;
                var code = before.RowOf(id) is var old and >= 0 ? before.Codes[old] : "?";
                var (file, fileRow) = faults.PlaceOf(
                    table.Definition,
                    table.Ids[users.First().Row]
                );
                var count = users.Count();
                errors.Add(
                    file,
                    fileRow,
                    column.Name,
                    code,
                    CellParser.Expected(column, draft.Currency),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"\"{code}\" would be removed by the replacement of {removal.Definition.Name} but is still used by {count} {(count == 1 ? "row" : "rows")} of {table.Definition.Name}: keep its row in the file, or take it out of {table.Definition.Name} first"
                    )
                );
                draft.MarkUnclean(table.Definition);
            }
        }
    }

    private static bool ReferencesHold(Project project) =>
        !ProjectLayout.Tables.Any(definition => Dangling(project, definition).Any());

    private static IEnumerable<(Table Table, ColumnDefinition Column, int Row, int Id)> Dangling(
        Project project,
        TableDefinition target
    )
    {
        foreach (var table in project.Tables)
        {
            foreach (
                var column in table.Definition.Columns.Where(column =>
                    column.Targets.Contains(target.Name, StringComparer.Ordinal)
                )
            )
            {
                for (var row = 0; row < table.Count; row++)
                {
                    var stored = table.Ints(column)[row];
                    if (
                        Cell.IsGiven(stored)
                        && column.DecodeReference(stored) is var (place, id)
                        && place >= 0
                        && ProjectLayout.Target(column, place) == target
                        && project[target].RowOf(id) < 0
                    )
                    {
                        yield return (table, column, row, id);
                    }
                }
            }
        }
    }
}
