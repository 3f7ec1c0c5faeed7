using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Exchange.Books;

namespace Plenum.Workbench.Workbooks;

/// <summary>
/// Reads a workbook that came back and compares it with the project as it is now. Rows are known by a hidden id and
/// their code. Elements that are not on the sheets stay as they are: nothing is ever removed.
/// </summary>
public sealed class WorkbookReading
{
    private readonly Project project;
    private readonly SheetDifference difference;
    private readonly List<WorkbookReason> reasons = [];

    private WorkbookReading(Project project)
    {
        this.project = project;
        difference = new SheetDifference(project, new InputErrors());
    }

    /// <param name="project">The project.</param>
    /// <param name="path">The workbook.</param>
    public static WorkbookAnswer Read(Project project, string path) =>
        new WorkbookReading(project).Read(path);

    private WorkbookAnswer Read(string path)
    {
        var file = Path.GetFileName(path);
        if (!WorkbookLayout.IsWorkbook(path))
        {
            difference.Errors.Add(
                file,
                $"a file whose name ends in {WorkbookLayout.Extension}",
                $"this is no workbook: name the {WorkbookLayout.Extension} file that was written and edited"
            );
            return new WorkbookAnswer([], [], difference.Errors, null);
        }

        var sheets = BookReader.Read(path, difference.Errors);
        var outline = Sheet(sheets, WorkbookLayout.Outline);
        CheckSheets(sheets);
        if (outline is null)
        {
            if (!difference.Errors.Any)
            {
                difference.Errors.Add(
                    file,
                    $"a sheet {WorkbookLayout.Outline}",
                    $"the sheet {WorkbookLayout.Outline} is missing: put it back, or write the workbook anew"
                );
            }

            return new WorkbookAnswer([], [], difference.Errors, null);
        }

        if (difference.Errors.Any)
        {
            return new WorkbookAnswer([], [], difference.Errors, null);
        }

        var reading = new OutlineReading(project, outline, difference);
        reading.Read();
        if (Sheet(sheets, WorkbookLayout.Dictionary) is { } dictionary)
        {
            ReadDictionary(dictionary, reading.Names);
        }

        if (Sheet(sheets, WorkbookLayout.Matrix) is { } matrix)
        {
            ReadMatrix(matrix, reading.Names);
        }

        if (difference.Errors.Any)
        {
            return new WorkbookAnswer([], [], difference.Errors, null);
        }

        return new WorkbookAnswer(
            difference.Changes,
            reading.Missing,
            difference.Errors,
            difference.Changes.Count == 0
                ? null
                : new EditWorkbookCommand(
                    file,
                    reading.Rows,
                    reading.Families,
                    difference.Cells,
                    reasons
                )
        );
    }

    private static ReadBookSheet? Sheet(IReadOnlyList<ReadBookSheet> sheets, string name) =>
        sheets.FirstOrDefault(sheet => sheet.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    private void CheckSheets(IReadOnlyList<ReadBookSheet> sheets)
    {
        foreach (var sheet in sheets)
        {
            var (needed, known) = sheet.Name.ToLowerInvariant() switch
            {
                WorkbookLayout.Outline => (
                    new[]
                    {
                        WorkbookLayout.Id,
                        WorkbookLayout.Code,
                        WorkbookLayout.Level,
                        WorkbookLayout.Name,
                    },
                    WorkbookLayout.OutlineColumns.Select(column => column.Name)
                ),
                WorkbookLayout.Dictionary => (
                    new[] { WorkbookLayout.Id, WorkbookLayout.Code },
                    WorkbookLayout
                        .DictionaryColumns.Select(column => column.Name)
                        .Append(WorkbookLayout.Name)
                ),
                WorkbookLayout.Matrix => (
                    new[] { WorkbookLayout.Id, WorkbookLayout.Code },
                    WorkbookLayout
                        .Activities(project)
                        .Select(activity => BookReader.Plain(activity.Heading))
                        .Append(WorkbookLayout.Name)
                        .Append(WorkbookLayout.PartType)
                ),
                _ => ((string[]?)null, Enumerable.Empty<string>()),
            };
            if (needed is null)
            {
                var nearest = NearestWord.Of(sheet.Name, WorkbookLayout.Sheets);
                difference.Errors.Add(
                    sheet.File,
                    nearest ?? string.Join(", ", WorkbookLayout.Sheets),
                    $"no sheet of this workbook is called \"{sheet.Name}\"; "
                        + (
                            nearest is null
                                ? $"known are {string.Join(", ", WorkbookLayout.Sheets)}."
                                : $"did you mean {nearest}?"
                        )
                        + " A sheet of your own begins with \"_\""
                );
                continue;
            }

            CheckHeadings(sheet, needed, needed.Concat(known).ToHashSet(StringComparer.Ordinal));
        }
    }

    private void CheckHeadings(ReadBookSheet sheet, string[] needed, HashSet<string> known)
    {
        foreach (var heading in needed.Where(heading => !sheet.Has(heading)))
        {
            difference.Errors.Add(
                sheet.File,
                1,
                heading,
                "",
                $"a column {heading}",
                $"the column {heading} is missing: put it back, or write the workbook anew"
            );
        }

        foreach (var heading in sheet.Headings.Where(heading => !known.Contains(heading)))
        {
            var nearest = NearestWord.Of(heading, known);
            difference.Errors.Add(
                sheet.File,
                1,
                heading,
                heading,
                nearest ?? string.Join(", ", known),
                $"no column of the sheet {sheet.Name} is called \"{InputErrors.Shorten(heading)}\"; "
                    + (nearest is null ? "remove it" : $"did you mean {nearest}?")
            );
        }
    }

    private void ReadDictionary(ReadBookSheet sheet, Dictionary<int, string> names)
    {
        var keys = new SheetKeys(project, sheet, difference.Errors);
        foreach (var row in sheet.Rows)
        {
            if (keys.Find(row, mayBeNew: false) is not { } position)
            {
                continue;
            }

            CheckName(sheet, row, position, names);
            foreach (var column in WorkbookLayout.DictionaryColumns)
            {
                difference.Compare(sheet, row, position, column);
            }
        }
    }

    /// <summary>Names are changed on the outline.</summary>
    private void CheckName(
        ReadBookSheet sheet,
        ReadBookRow row,
        int position,
        Dictionary<int, string> names
    )
    {
        var name = row[WorkbookLayout.Name].Trim();
        var own = project.Tree.Name(position).Trim();
        if (
            sheet.Has(WorkbookLayout.Name)
            && name != own
            && name != names.GetValueOrDefault(project.Tree.Elements.Ids[position], own)
        )
        {
            difference.Errors.Add(
                sheet.File,
                row.Row,
                WorkbookLayout.Name,
                name,
                own,
                $"names are changed on the sheet {WorkbookLayout.Outline}: put \"{InputErrors.Shorten(own)}\" back here"
            );
        }
    }

    private void ReadMatrix(ReadBookSheet sheet, Dictionary<int, string> names)
    {
        var keys = new SheetKeys(project, sheet, difference.Errors);
        var cells = new MatrixCells(project);
        var activities = WorkbookLayout
            .Activities(project)
            .Where(activity => sheet.Has(BookReader.Plain(activity.Heading)))
            .ToList();
        foreach (var row in sheet.Rows)
        {
            if (keys.Find(row, mayBeNew: false) is not { } position)
            {
                continue;
            }

            CheckName(sheet, row, position, names);
            foreach (var (heading, activity) in activities)
            {
                CompareCell(sheet, row, position, heading, activity, cells);
            }
        }
    }

    private void CompareCell(
        ReadBookSheet sheet,
        ReadBookRow row,
        int position,
        string heading,
        string activity,
        MatrixCells cells
    )
    {
        var (state, before) = cells.At(position, activity);
        var after = row[BookReader.Plain(heading)].Trim();
        if (after == (before ?? "").Trim())
        {
            return;
        }

        var code = project.Tree.Code(position);
        switch (state)
        {
            case MatrixState.Planned:
                Complain(
                    before!,
                    $"{activity} of {code} is planned by {before}: put that back. What is planned is changed in Plenum itself"
                );
                return;
            case MatrixState.OutOfSet when after is "" or "-":
                return;
            case MatrixState.OutOfSet:
                Complain(
                    WorkbookLayout.OutOfSet,
                    $"the work set of {code} does not have {activity}, so there is nothing to rule out: put the dash back"
                );
                return;
        }

        if (after.Length > 0 && !after.Any(char.IsLetter))
        {
            Complain(
                "a reason in words, or nothing",
                $"\"{InputErrors.Shorten(after)}\" is no reason why {code} does not need {activity}: say it in words. Work is planned in Plenum itself"
            );
            return;
        }

        reasons.Add(
            new WorkbookReason(
                project.Tree.Elements.Ids[position],
                activity,
                after.Length == 0 ? null : after,
                before
            )
        );
        difference.Note(sheet, row, code, activity, before, after.Length == 0 ? null : after);

        void Complain(string expected, string message) =>
            difference.Errors.Add(sheet.File, row.Row, heading, after, expected, message);
    }
}
