using System.Globalization;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Examples;

/// <summary>Puts worked examples into tables: one root, packages right below it, periods of whole months or weeks.</summary>
internal sealed class ExampleBuilder
{
    private readonly TextProject text = new();
    private readonly List<Expectation> expected = [];
    private readonly List<(DateOnly Begin, DateOnly End)> periods = [];

    private ExampleBuilder(string name, string currency, DateOnly start)
    {
        text.Add("project", ("key", "code"), ("value", "EX"));
        text.Add("project", ("key", "name"), ("value", name));
        text.Add("project", ("key", "currency"), ("value", currency));
        text.Add("project", ("key", "start"), ("value", Iso(start)));
        text.Add(
            "elements",
            ("code", "R"),
            ("parent", ""),
            ("name", name),
            ("kind", "project"),
            ("quantity", "")
        );
    }

    /// <summary>Calendar months from January 2026.</summary>
    public static ExampleBuilder Months(string name, int count, string currency = "USD")
    {
        var builder = new ExampleBuilder(name, currency, new DateOnly(2026, 1, 1));
        for (var month = 0; month < count; month++)
        {
            var begin = new DateOnly(2026, 1, 1).AddMonths(month);
            builder.AddPeriod(begin, begin.AddMonths(1).AddDays(-1));
        }

        return builder;
    }

    /// <summary>Weeks from Monday to Sunday, the first from Monday, 5 January 2026.</summary>
    public static ExampleBuilder Weeks(string name, int count, string currency = "USD")
    {
        var builder = new ExampleBuilder(name, currency, new DateOnly(2026, 1, 5));
        for (var week = 0; week < count; week++)
        {
            var begin = new DateOnly(2026, 1, 5).AddDays(7 * week);
            builder.AddPeriod(begin, begin.AddDays(6));
        }

        return builder;
    }

    public DateOnly Begin(int period) => periods[period - 1].Begin;

    public DateOnly End(int period) => periods[period - 1].End;

    /// <summary>A package from the beginning of one period to the end of another.</summary>
    public ExampleBuilder Package(
        string code,
        string technique,
        string budget,
        int from,
        int to,
        string spread = "even",
        string quantity = "",
        string basis = ""
    )
    {
        text.Add(
            "elements",
            ("code", code),
            ("parent", "R"),
            ("name", "Package " + code),
            ("kind", "work_package"),
            ("quantity", quantity)
        );
        text.Add(
            "packages",
            ("package", code),
            ("technique", technique),
            ("base", basis),
            ("spread", spread),
            ("start", Iso(Begin(from))),
            ("finish", Iso(End(to)))
        );
        text.Add("budget", ("package", code), ("cost_element", "labour"), ("amount", budget));
        return this;
    }

    /// <summary>Amounts for the periods from the first on, for a package with spread <c>periods</c>.</summary>
    public ExampleBuilder PlannedPerPeriod(string package, params string[] amounts)
    {
        for (var i = 0; i < amounts.Length; i++)
        {
            text.Add(
                "budget_periods",
                ("package", package),
                ("period", Code(i + 1)),
                ("amount", amounts[i])
            );
        }

        return this;
    }

    public ExampleBuilder Status(string package, int period, string field, string value)
    {
        var row =
            text.Rows("status")
                .FirstOrDefault(row => row["package"] == package && row["period"] == Code(period))
            ?? text.Add("status", ("package", package), ("period", Code(period)));
        row[field] = value;
        return this;
    }

    /// <summary>Started at the beginning of a period.</summary>
    public ExampleBuilder Started(string package, int period) =>
        Status(package, period, "started", Iso(Begin(period)));

    /// <summary>Started at the beginning and finished at the end of a period.</summary>
    public ExampleBuilder Done(string package, int period) =>
        Started(package, period).Status(package, period, "finished", Iso(End(period)));

    public ExampleBuilder Milestone(
        string package,
        string code,
        string weight,
        int planned,
        int? done
    )
    {
        text.Add(
            "milestones",
            ("package", package),
            ("milestone", code),
            ("weight", weight),
            ("planned", Iso(End(planned)))
        );
        if (done is { } period)
        {
            text.Add(
                "milestone_status",
                ("package", package),
                ("milestone", code),
                ("period", Code(period)),
                ("done", Iso(End(period)))
            );
        }

        return this;
    }

    public ExampleBuilder Cost(string package, int period, string amount)
    {
        text.Add(
            "actuals",
            ("document", "D" + Text(text.Rows("actuals").Count + 1)),
            ("line", "1"),
            ("charge", package),
            ("period", Code(period)),
            ("cost_element", "labour"),
            ("amount", amount)
        );
        return this;
    }

    /// <summary>Figures of a row at the end of a period; the row <c>*total</c> is the project.</summary>
    public ExampleBuilder Expect(
        string row,
        int period,
        params (string Measure, string? Value)[] figures
    )
    {
        foreach (var (measure, value) in figures)
        {
            expected.Add(new Expectation("package", row, End(period), measure, value));
        }

        return this;
    }

    public WorkedExample Build(string source)
    {
        var name = text.Setting("name");
        return new WorkedExample(name, source, text, expected);
    }

    private static string Iso(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Code(int period) => "P" + Text(period);

    private void AddPeriod(DateOnly begin, DateOnly end)
    {
        periods.Add((begin, end));
        text.Add("periods", ("period", Code(periods.Count)), ("end", Iso(end)));
    }
}
