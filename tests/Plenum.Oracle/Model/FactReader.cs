using System.Globalization;
using System.Numerics;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Model;

/// <summary>Reads the facts out of text tables that are taken to be valid.</summary>
public sealed class FactReader(TextProject project)
{
    private readonly string currency = project.Setting("currency");
    private readonly List<Period> periods = [];

    public Facts Read()
    {
        var start = Date(project.Setting("start"));
        ReadPeriods(start);
        var elements = Elements();
        return new Facts(
            Currency.Digits(currency),
            start,
            Date(project.Setting("status_date")),
            project.Setting("accruals") != "as_booked",
            ReadCalendar(project.Setting("calendar")),
            periods,
            elements,
            [.. elements.Where(element => element.IsPackage).Select(ReadPackage)],
            [
                .. project
                    .Rows("accounts")
                    .Select(row => new Account(
                        row["account"],
                        row["name"],
                        row["element"],
                        row["unit"]
                    ))
                    .OrderBy(account => account.Code, NaturalOrder.Instance),
            ],
            DepthFirst(project.Rows("units"), "unit"),
            project
                .Rows("groups")
                .GroupBy(row => row["grouping"], StringComparer.Ordinal)
                .ToDictionary(
                    rows => rows.Key,
                    rows => DepthFirst([.. rows], "group"),
                    StringComparer.Ordinal
                ),
            project
                .Rows("group_members")
                .ToDictionary(row => (row["grouping"], row["package"]), row => row["group"]),
            [
                .. project
                    .Rows("budget_periods")
                    .Select(row => new PeriodAmount(
                        row["package"],
                        PeriodOf(row),
                        row["cost_element"],
                        Money(row["amount"])
                    )),
            ],
            [
                .. project
                    .Rows("milestones")
                    .Select(row => new Milestone(
                        row["package"],
                        row["milestone"],
                        Ratio.Parse(row["weight"]),
                        Date(row["planned"])
                    )),
            ],
            [
                .. project
                    .Rows("items")
                    .Select(row => new Item(
                        row["package"],
                        row["item"],
                        Number(row["quantity"]),
                        Number(row["hours"]) ?? Ratio.Zero,
                        row["rule"]
                    )),
            ],
            [
                .. project
                    .Rows("credit_steps")
                    .Select(row => new CreditStep(
                        row["rule"],
                        row["step"],
                        Ratio.Parse(row["percent"])
                    )),
            ],
            Reports("status", "", ""),
            Reports("milestone_status", "milestone", ""),
            Reports("item_steps", "item", "step"),
            [
                .. project
                    .Rows("actuals")
                    .Select(row => new Booking(
                        row["charge"],
                        PeriodOf(row),
                        row["cost_element"],
                        Currency.Converted(row["amount"], row["currency"], row["rate"], currency),
                        row["kind"] == "accrual"
                    )),
            ],
            [
                .. project
                    .Rows("commitments")
                    .Select(row => new Commitment(
                        row["package"],
                        row["cost_element"],
                        Money(row["amount"]),
                        Date(row["date"])
                    )),
            ],
            Undistributed(),
            LastPeriodReported()
        );
    }

    private static DateOnly? Date(string text) =>
        text.Length == 0
            ? null
            : DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Ratio? Number(string text) => text.Length == 0 ? null : Ratio.Parse(text);

    private BigInteger Money(string amount) => Currency.MinorUnits(amount, currency);

    private Period PeriodOf(TextRow row) => periods.Single(period => period.Code == row["period"]);

    private void ReadPeriods(DateOnly? start)
    {
        var begin = start;
        foreach (var row in project.Rows("periods").OrderBy(row => Date(row["end"])))
        {
            var end = Date(row["end"])!.Value;
            periods.Add(new Period(row["period"], periods.Count + 1, begin, end));
            begin = end.AddDays(1);
        }
    }

    private Calendar ReadCalendar(string name)
    {
        if (name.Length == 0)
        {
            return Calendar.MondayToFriday;
        }

        return new Calendar(
            project.Rows("calendars").Single(row => row["calendar"] == name)["working"],
            project
                .Rows("calendar_days")
                .Where(row => row["calendar"] == name)
                .ToDictionary(row => Date(row["date"])!.Value, row => row["working"] == "1")
        );
    }

    private List<Element> Elements()
    {
        var list = new List<Element>();
        AddChildren(list, "", 1);
        return list;
    }

    private void AddChildren(List<Element> list, string parent, int level)
    {
        var sisters = project
            .Rows("elements")
            .Where(row => row["parent"] == parent)
            .OrderBy(row =>
                row.Has("order") ? int.Parse(row["order"], CultureInfo.InvariantCulture) : 0
            )
            .ThenBy(row => row["code"], NaturalOrder.Instance);
        foreach (var row in sisters)
        {
            var leaf = !project.Rows("elements").Any(other => other["parent"] == row["code"]);
            list.Add(
                new Element(
                    row["code"],
                    parent,
                    level,
                    row["name"],
                    Kind(row, leaf),
                    row["split"],
                    row["unit"],
                    Number(row["quantity"]),
                    row.Has("allotted") ? Money(row["allotted"]) : null
                )
            );
            AddChildren(list, row["code"], level + 1);
        }
    }

    private static string Kind(TextRow row, bool leaf)
    {
        if (row.Has("kind"))
        {
            return row["kind"];
        }

        if (!row.Has("parent"))
        {
            return "project";
        }

        return leaf ? "work_package" : "branch";
    }

    private Package ReadPackage(Element element)
    {
        var code = element.Code;
        var row =
            project.Rows("packages").SingleOrDefault(row => row["package"] == code)
            ?? new TextRow();
        var budget = project.Rows("budget").Where(line => line["package"] == code).ToList();
        return new Package(
            code,
            row["account"],
            row["technique"],
            row["base"],
            row.Has("spread") ? row["spread"] : "even",
            Date(row["start"]),
            Date(row["finish"]),
            CostElements.All.ToDictionary(
                costElement => costElement,
                costElement =>
                    budget
                        .Where(line => line["cost_element"] == costElement)
                        .Select(line =>
                            Currency.Converted(
                                line["amount"],
                                line["currency"],
                                line["rate"],
                                currency
                            )
                        )
                        .Aggregate(BigInteger.Zero, BigInteger.Add),
                StringComparer.Ordinal
            ),
            budget
                .Where(line => line.Has("hours"))
                .Select(line => (Ratio.Parse(line["hours"]) * Ratio.Of(100)).Numerator)
                .Aggregate(BigInteger.Zero, BigInteger.Add)
        );
    }

    private static IReadOnlyList<Node> DepthFirst(IReadOnlyList<TextRow> rows, string codeColumn)
    {
        var list = new List<Node>();
        AddNodes(rows, codeColumn, list, "");
        return list;
    }

    private static void AddNodes(
        IReadOnlyList<TextRow> rows,
        string codeColumn,
        List<Node> list,
        string parent
    )
    {
        var sisters = rows.Where(row => row["parent"] == parent)
            .OrderBy(row => row[codeColumn], NaturalOrder.Instance);
        foreach (var row in sisters)
        {
            list.Add(new Node(row[codeColumn], row["name"], parent));
            AddNodes(rows, codeColumn, list, row[codeColumn]);
        }
    }

    private List<Report> Reports(string table, string partColumn, string stepColumn) =>
        [
            .. project
                .Rows(table)
                .Select(row => new Report(
                    row["package"],
                    partColumn.Length == 0 ? "" : row[partColumn],
                    stepColumn.Length == 0 ? "" : row[stepColumn],
                    PeriodOf(row),
                    row
                )),
        ];

    /// <summary>What the postings leave in undistributed budget and in allowances.</summary>
    private BigInteger Undistributed()
    {
        var balance = BigInteger.Zero;
        foreach (var row in project.Rows("postings"))
        {
            balance += row["to"] is "undistributed" or "allowances" ? Money(row["amount"]) : 0;
            balance -= row["from"] is "undistributed" or "allowances" ? Money(row["amount"]) : 0;
        }

        return balance;
    }

    private int? LastPeriodReported()
    {
        string[] tables =
        [
            "status",
            "activity_status",
            "milestone_status",
            "item_steps",
            "actuals",
        ];
        return tables.SelectMany(project.Rows).Max(row => (int?)PeriodOf(row).Number);
    }
}
