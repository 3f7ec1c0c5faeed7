using System.Globalization;
using System.Text;
using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Web.Shell;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Web.Accounts;

/// <summary>What a reader wants of a table: which rows, in which order, with which columns.</summary>
/// <param name="Find">Rows whose code, name or manager holds these words; empty for all.</param>
/// <param name="OnlyFlagged">Only rows that hide offsets.</param>
/// <param name="Sort">Id of the column that it is sorted by; null for the usual order.</param>
/// <param name="Upwards">Smallest first.</param>
/// <param name="Schedule">Offsets and masking are those of schedule, not of cost.</param>
public sealed record TableWish(
    string Find,
    bool OnlyFlagged,
    string? Sort,
    bool Upwards,
    bool Schedule
)
{
    public static TableWish Of(Sheet sheet) =>
        new(
            sheet.Value("find") ?? "",
            sheet.Value("only") == "flagged",
            sheet.Value("sort"),
            sheet.Value("order") == "up",
            sheet.Value("offsets") == "schedule"
        );
}

/// <summary>The rows of an accounts answer as a reader wants to see them.</summary>
public sealed class TableView
{
    private TableView(
        AccountsAnswer answer,
        IReadOnlyList<TableRow> rows,
        TableRow total,
        TableRow? shown,
        int all,
        int flagged,
        string order
    )
    {
        Answer = answer;
        Rows = rows;
        Total = total;
        Shown = shown;
        All = all;
        Flagged = flagged;
        Order = order;
    }

    public AccountsAnswer Answer { get; }

    public IReadOnlyList<TableRow> Rows { get; }

    /// <summary>The whole.</summary>
    public TableRow Total { get; }

    /// <summary>Sum of the rows that are shown, where not all are and they do not lie in one another; without earned schedule.</summary>
    public TableRow? Shown { get; }

    /// <summary>Number of rows that there are, those that only make the cut tie out not counted.</summary>
    public int All { get; }

    /// <summary>Number of rows that hide offsets.</summary>
    public int Flagged { get; }

    /// <summary>The order in words.</summary>
    public string Order { get; }

    public static TableView Of(
        Project project,
        AccountsAnswer answer,
        TrendAnswer? trends,
        CertaintyAnswer? certainty,
        IReadOnlyList<MeasureColumn> columns,
        TableWish wish
    )
    {
        var names = Names(project, answer);
        var known = certainty?.Rows.ToDictionary(row => row.Code, StringComparer.Ordinal);
        List<TableRow> rows =
        [
            .. answer.Rows.Select(row => new TableRow(
                row,
                names(row.Code),
                Hides(row, row.Sums.CostGained, row.Sums.CostLost, answer.Threshold),
                Hides(row, row.Sums.ScheduleGained, row.Sums.ScheduleLost, answer.Threshold),
                trends?.Rows.GetValueOrDefault(row.Code),
                known?.GetValueOrDefault(row.Code)
            )),
        ];
        var all = rows.Count(row => !row.IsRest);
        var flagged = rows.Count(row => row.IsFlagged);
        var isTree = rows.Exists(row => row.Row.Level > 0);
        var wanted = rows.Where(row => IsWanted(row, wish)).ToList();
        var order = Sort(wanted, columns, wish, isTree);
        return new TableView(
            answer,
            wanted,
            new TableRow(answer.Total, null, false, false, null, certainty?.Total),
            wanted.Count == rows.Count || isTree ? null : SumOf(wanted, answer),
            all,
            flagged,
            order
        );
    }

    /// <summary>The table as text with tabs: exact figures, in major units, without marks.</summary>
    public string ToText(IReadOnlyList<MeasureColumn> columns, TableWish wish)
    {
        var text = new StringBuilder("Code\tName");
        foreach (var column in columns)
        {
            foreach (var head in HeadsOf(column, wish))
            {
                text.Append('\t').Append(head);
            }
        }

        foreach (var row in Rows.Append(Total))
        {
            text.Append('\n').Append(Clean(row.Row.Code)).Append('\t').Append(Clean(row.Row.Name));
            foreach (var column in columns)
            {
                foreach (var value in ValuesOf(column, row, wish))
                {
                    text.Append('\t').Append(Cell(value));
                }
            }
        }

        return text.Append('\n').ToString();
    }

    /// <summary>Value of a column, with the switch between cost and schedule.</summary>
    public static object? ValueOf(MeasureColumn column, TableRow row, TableWish wish) =>
        (column.Id, wish.Schedule) switch
        {
            ("offsets", true) => row.Row.ScheduleGained - row.Row.ScheduleLost,
            ("masking", true) => row.Row.ScheduleMasking,
            _ => column.Value(row),
        };

    private static IEnumerable<string> HeadsOf(MeasureColumn column, TableWish wish) =>
        column.Kind switch
        {
            ColumnKind.Offsets => wish.Schedule
                ? ["Lost in schedule", "Gained in schedule"]
                : ["Lost in cost", "Gained in cost"],
            ColumnKind.Trend => [],
            _ => [column.Name],
        };

    private static IEnumerable<object?> ValuesOf(
        MeasureColumn column,
        TableRow row,
        TableWish wish
    ) =>
        column.Kind switch
        {
            ColumnKind.Offsets => wish.Schedule
                ? [row.Row.ScheduleLost, row.Row.ScheduleGained]
                : [row.Row.CostLost, row.Row.CostGained],
            ColumnKind.Trend => [],
            _ => [ValueOf(column, row, wish)],
        };

    private static string Cell(object? value) =>
        value switch
        {
            null => "",
            decimal number => number.ToString(CultureInfo.InvariantCulture),
            int number => number.ToString(CultureInfo.InvariantCulture),
            DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            _ => Clean(value.ToString() ?? ""),
        };

    /// <summary>Text that a spreadsheet takes as one cell and not as a formula.</summary>
    private static string Clean(string text)
    {
        var flat = text.Replace('\t', ' ').Replace('\n', ' ').Replace('\r', ' ');
        return flat.Length > 0 && flat[0] is '=' or '+' or '-' or '@' ? "'" + flat : flat;
    }

    private static bool Hides(MeasureRow row, long gained, long lost, Fraction threshold) =>
        !row.Code.StartsWith('*')
        && Thresholds.Hides(gained, lost, Thresholds.Of(row.Sums, threshold));

    private static bool IsWanted(TableRow row, TableWish wish) =>
        (!wish.OnlyFlagged || row.IsFlagged)
        && (
            wish.Find.Length == 0
            || Holds(row.Row.Code, wish.Find)
            || Holds(row.Row.Name, wish.Find)
            || Holds(row.Manager, wish.Find)
        );

    private static bool Holds(string? text, string words) =>
        text?.Contains(words, StringComparison.OrdinalIgnoreCase) == true;

    private static string Sort(
        List<TableRow> rows,
        IReadOnlyList<MeasureColumn> columns,
        TableWish wish,
        bool isTree
    )
    {
        var column = columns.FirstOrDefault(known => known.Id == wish.Sort);
        if (wish.Sort == "code")
        {
            // the answer's own order is by code
            if (!wish.Upwards)
            {
                rows.Reverse();
            }

            Rests(rows);
            return wish.Upwards ? "ordered by code" : "ordered by code, backwards";
        }

        if (column is null)
        {
            if (isTree)
            {
                return "in the order of their tree";
            }

            Replace(rows, rows.OrderBy(row => -Movement(row, wish)));
            Rests(rows);
            return wish.Schedule
                ? "ordered by movement in schedule inside them"
                : "ordered by movement in cost inside them";
        }

        Replace(
            rows,
            wish.Upwards
                ? rows.OrderBy(row => ValueOf(column, row, wish), ValuesUpwards.Instance)
                : rows.OrderByDescending(row => ValueOf(column, row, wish), ValuesUpwards.Instance)
        );
        Rests(rows);
        var name = char.ToLowerInvariant(column.Name[0]) + column.Name[1..];
        return column.IsText
            ? $"ordered by {name}, {(wish.Upwards ? "A to Z" : "Z to A")}"
            : $"ordered by {name}, {(wish.Upwards ? "smallest" : "largest")} first";
    }

    private static decimal Movement(TableRow row, TableWish wish) =>
        wish.Schedule
            ? row.Row.ScheduleGained - row.Row.ScheduleLost
            : row.Row.CostGained - row.Row.CostLost;

    /// <summary>Rows that only make the cut tie out stand last, whatever the order.</summary>
    private static void Rests(List<TableRow> rows) =>
        Replace(rows, rows.OrderBy(row => row.IsRest));

    private static void Replace(List<TableRow> rows, IEnumerable<TableRow> ordered)
    {
        var sorted = ordered.ToList();
        rows.Clear();
        rows.AddRange(sorted);
    }

    private static TableRow SumOf(List<TableRow> rows, AccountsAnswer answer)
    {
        var sums = default(MeasureSums);
        foreach (var row in rows)
        {
            sums.Add(row.Row.Sums);
        }

        return new TableRow(
            answer.Total with
            {
                Code = "",
                Name = rows.Count == 1 ? "1 row shown" : $"{Amounts.Count(rows.Count)} rows shown",
                Sums = sums,
                Schedule = default,
            },
            null,
            false,
            false,
            null
        );
    }

    /// <summary>Who answers for the row of a code.</summary>
    private static Func<string, string?> Names(Project project, AccountsAnswer answer)
    {
        var people = project[PersonTable.Definition];
        if (answer.Question.PackagesOf is not null || answer.Question.By is "package" or "element")
        {
            var person = project.Tree.Inherited(ElementTable.Person);
            return code =>
                project.Tree.Elements.RowOfCode(code) is var row and >= 0
                    ? NameOf(people, person[row])
                    : null;
        }

        if (answer.Question.By == "account")
        {
            var accounts = project.Placement.Accounts;
            return code =>
                accounts.RowOfCode(code) is var row and >= 0
                    ? NameOf(people, accounts.Ints(AccountTable.Manager)[row])
                    : null;
        }

        return _ => null;
    }

    private static string? NameOf(Table people, int id) =>
        id == Core.Foundation.Tables.Cell.NoInt || people.RowOf(id) is not (var row and >= 0) ? null
        : people.Texts(PersonTable.Name)[row] is { Length: > 0 } name ? name
        : people.Codes[row];

    /// <summary>Orders values of one column; what has no value comes first, so that it stands last in the usual order.</summary>
    private sealed class ValuesUpwards : IComparer<object?>
    {
        public static readonly ValuesUpwards Instance = new();

        public int Compare(object? x, object? y) =>
            (x, y) switch
            {
                (null, null) => 0,
                (null, _) => -1,
                (_, null) => 1,
                (string a, string b) => string.Compare(a, b, StringComparison.OrdinalIgnoreCase),
                _ => Comparer<object>.Default.Compare(x, y),
            };
    }
}
