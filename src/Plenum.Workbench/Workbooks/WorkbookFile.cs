using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Books;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Workbooks;

/// <summary>Writes the workbook in which a breakdown is edited: outline, dictionary, and parts by activities.</summary>
public static class WorkbookFile
{
    /// <param name="project">The project.</param>
    /// <param name="under">Code of the element whose subtree is written; null for the whole.</param>
    /// <param name="path">The file; one that is there is replaced.</param>
    /// <returns>How many elements were written.</returns>
    /// <exception cref="QuestionException">
    /// Nothing is broken down, there is no such element, or the file's name is not that of a workbook.
    /// </exception>
    /// <exception cref="IOException">It cannot be written, or does not fit in a workbook.</exception>
    public static int Write(Project project, string? under, string path)
    {
        if (!WorkbookLayout.IsWorkbook(path))
        {
            throw new QuestionException(
                $"\"{Path.GetFileName(path)}\" is no name for a workbook; a name that ends in {WorkbookLayout.Extension} is expected."
            );
        }

        var tree = project.Tree;
        if (tree.Count == 0)
        {
            throw new QuestionException(
                "Nothing is broken down yet, so there is no workbook to write."
            );
        }

        var top = Math.Max(0, ElementPosition.Of(project, under));
        var sheets = new SheetContent(project, top, tree.SubtreeEnd[top]);
        BookWriter.Write(
            path,
            [sheets.Outline(), sheets.Dictionary(), sheets.Matrix()],
            WorkbookLayout.Notes
        );
        return tree.SubtreeEnd[top] - top;
    }

    private sealed class SheetContent(Project project, int from, int to)
    {
        private const double Narrow = 12;
        private const double Wide = 34;
        private const double NameWidth = 52;

        private static readonly BookColumn Id = new(
            WorkbookLayout.Id,
            BookColumnKind.Key,
            8,
            IsHidden: true
        );
        private static readonly BookColumn Code = new(WorkbookLayout.Code, BookColumnKind.Key, 16);

        private readonly ElementTree tree = project.Tree;
        private readonly ProjectText text = new(project);

        public BookSheet Outline() =>
            new(
                WorkbookLayout.Outline,
                [
                    Id,
                    Code,
                    new BookColumn(WorkbookLayout.Level, BookColumnKind.Text, 7),
                    new BookColumn(WorkbookLayout.Name, BookColumnKind.Name, NameWidth),
                    .. WorkbookLayout.OutlineColumns.Select(ColumnOf),
                ],
                4,
                Rows(row =>
                    [
                        tree.Level[row].ToString(CultureInfo.InvariantCulture),
                        tree.Name(row),
                        .. Cells(row, WorkbookLayout.OutlineColumns),
                    ]
                )
            );

        public BookSheet Dictionary() =>
            new(
                WorkbookLayout.Dictionary,
                [
                    Id,
                    Code,
                    new BookColumn(WorkbookLayout.Name, BookColumnKind.Shown, NameWidth),
                    .. WorkbookLayout.DictionaryColumns.Select(ColumnOf),
                ],
                3,
                Rows(row => [tree.Name(row), .. Cells(row, WorkbookLayout.DictionaryColumns)])
            );

        public BookSheet Matrix()
        {
            var activities = WorkbookLayout.Activities(project);
            var cells = new MatrixCells(project);
            return new BookSheet(
                WorkbookLayout.Matrix,
                [
                    Id,
                    Code,
                    new BookColumn(WorkbookLayout.Name, BookColumnKind.Shown, NameWidth),
                    new BookColumn(WorkbookLayout.PartType, BookColumnKind.Shown, Narrow),
                    .. activities.Select(activity => new BookColumn(
                        activity.Heading,
                        BookColumnKind.Lines,
                        Narrow + 6
                    )),
                ],
                3,
                Enumerable
                    .Range(from, to - from)
                    .Where(cells.IsPart)
                    .Select(row => MatrixRow(row, activities, cells))
            );
        }

        private BookRow MatrixRow(
            int row,
            IReadOnlyList<(string Heading, string Activity)> activities,
            MatrixCells cells
        )
        {
            var states = activities.Select(activity => cells.At(row, activity.Activity)).ToList();
            return new BookRow(
                tree.Level[row],
                false,
                [
                    Key(row),
                    tree.Code(row),
                    tree.Name(row),
                    text.Of(tree.Elements, row, ElementTable.PartType),
                    .. states.Select(state => state.Text),
                ],
                [
                    BookMark.None,
                    BookMark.None,
                    BookMark.None,
                    BookMark.None,
                    .. states.Select(state =>
                        state.State switch
                        {
                            MatrixState.Missing => BookMark.Open,
                            MatrixState.NotNeeded => BookMark.None,
                            _ => BookMark.Settled,
                        }
                    ),
                ]
            );
        }

        private IEnumerable<BookRow> Rows(Func<int, IEnumerable<string?>> cells) =>
            Enumerable
                .Range(from, to - from)
                .Select(row => new BookRow(
                    tree.Level[row] - tree.Level[from] + 1,
                    tree.HasChildren(row),
                    [Key(row), tree.Code(row), .. cells(row)],
                    []
                ));

        private IEnumerable<string?> Cells(int row, IEnumerable<ColumnDefinition> columns) =>
            columns.Select(column => text.Of(tree.Elements, row, column));

        private string Key(int row) =>
            tree.Elements.Ids[row].ToString(CultureInfo.InvariantCulture);

        private static BookColumn ColumnOf(ColumnDefinition column) =>
            column.Kind switch
            {
                CellKind.Money or CellKind.Hours or CellKind.Decimal => new BookColumn(
                    column.Name,
                    BookColumnKind.Number,
                    Narrow + 4
                ),
                CellKind.Text
                    when WorkbookLayout.DictionaryColumns.Contains(column)
                        && column != ElementTable.QuantityUnit => new BookColumn(
                    column.Name,
                    BookColumnKind.Lines,
                    Wide
                ),
                _ => new BookColumn(column.Name, BookColumnKind.Text, Narrow),
            };
    }
}
