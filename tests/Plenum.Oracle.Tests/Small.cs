using System.Globalization;
using Plenum.Oracle.Model;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Tests;

/// <summary>
/// A project for tests that are computed by hand: euros, root R, and four periods of seven days (Monday to Sunday)
/// of which the first begins on 5 January 2026.
/// </summary>
internal sealed class Small
{
    public static DateOnly FirstDay { get; } = new(2026, 1, 5);

    public TextProject Text { get; } = new();

    public Small(bool start = true)
    {
        Text.Add("project", ("key", "currency"), ("value", "EUR"));
        if (start)
        {
            Text.Add("project", ("key", "start"), ("value", Iso(FirstDay)));
        }

        Text.Add("elements", ("code", "R"), ("parent", ""), ("name", "Root"));
        for (var period = 1; period <= 4; period++)
        {
            Text.Add("periods", ("period", Code(period)), ("end", Iso(End(period))));
        }
    }

    public static DateOnly End(int period) => FirstDay.AddDays((7 * period) - 1);

    public static string Iso(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public Small Add(string table, params ReadOnlySpan<(string Column, string Value)> cells)
    {
        Text.Add(table, cells);
        return this;
    }

    /// <summary>A package with labour cost; days count from 1 at the project's first day.</summary>
    public Small Package(
        string code,
        string technique,
        string budget,
        int? firstDay,
        int? lastDay,
        string spread = "",
        string basis = "",
        string parent = "R",
        string unit = "",
        string quantity = "",
        string account = ""
    )
    {
        Add(
            "elements",
            ("code", code),
            ("parent", parent),
            ("name", code),
            ("unit", unit),
            ("quantity", quantity)
        );
        Add(
            "packages",
            ("package", code),
            ("account", account),
            ("technique", technique),
            ("base", basis),
            ("spread", spread),
            ("start", Day(firstDay)),
            ("finish", Day(lastDay))
        );
        return budget.Length == 0 ? this : Budget(code, "labour", budget);
    }

    public Small Budget(string package, string costElement, string amount) =>
        Add("budget", ("package", package), ("cost_element", costElement), ("amount", amount));

    public Small Status(string package, int period, string field, string value) =>
        Add("status", ("package", package), ("period", Code(period)), (field, value));

    public Small Cost(
        string charge,
        int period,
        string amount,
        string kind = "",
        string costElement = "labour"
    ) =>
        Add(
            "actuals",
            ("document", "D"),
            ("line", Text.Rows("actuals").Count.ToString(CultureInfo.InvariantCulture)),
            ("charge", charge),
            ("period", Code(period)),
            ("cost_element", costElement),
            ("amount", amount),
            ("kind", kind)
        );

    public Small Branch(string code, string parent = "R", string unit = "") =>
        Add(
            "elements",
            ("code", code),
            ("parent", parent),
            ("name", code),
            ("kind", "branch"),
            ("unit", unit)
        );

    public Small Account(string code, string element, string unit) =>
        Add(
            "accounts",
            ("account", code),
            ("element", element),
            ("unit", unit),
            ("manager", "ann")
        );

    public EarnedValueModel Model() => new(Text);

    /// <summary>The row of a cut at the end of a period.</summary>
    public Row At(
        int period,
        string row = "*total",
        string by = "package",
        int? level = null,
        bool alone = false
    ) => Model().Accounts(new Question(End(period), by, level, alone)).Row(row);

    /// <summary>The codes of the rows of a cut at the end of a period, with a space between.</summary>
    public string Codes(int period, string by, int? level = null) =>
        string.Join(
            ' ',
            Model().Accounts(new Question(End(period), by, level)).Rows.Select(row => row.Code)
        );

    public static string Day(int? day) =>
        day is { } number ? Iso(FirstDay.AddDays(number - 1)) : "";

    public static string Code(int period) => "P" + period.ToString(CultureInfo.InvariantCulture);
}
