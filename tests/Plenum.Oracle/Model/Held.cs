using System.Globalization;

namespace Plenum.Oracle.Model;

/// <summary>
/// A status field at a date: the value of the last row, by period end, that gives the field, among the rows of
/// periods that end on or before the date. A row that says <c>-</c> withdraws it.
/// </summary>
public static class Held
{
    private const string Withdrawn = "-";

    /// <summary>The text and the period that it was reported in; null when nothing is held.</summary>
    public static (string Text, Period Period)? Field(
        IEnumerable<Report> reports,
        string field,
        DateOnly date
    )
    {
        var last = reports
            .Where(report => report.Period.End <= date && report.Fields.Has(field))
            .OrderBy(report => report.Period.End)
            .LastOrDefault();
        return last is null || last.Fields[field] == Withdrawn
            ? null
            : (last.Fields[field], last.Period);
    }

    public static DateOnly? Date(IEnumerable<Report> reports, string field, DateOnly date) =>
        Field(reports, field, date) is { } held
            ? DateOnly.ParseExact(held.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture)
            : null;

    public static Ratio? Number(IEnumerable<Report> reports, string field, DateOnly date) =>
        Field(reports, field, date) is { } held ? Ratio.Parse(held.Text) : null;

    public static bool Started(Facts facts, Package package, DateOnly date) =>
        Date(Of(facts, package), "started", date) is { } started && started <= date;

    public static bool Finished(Facts facts, Package package, DateOnly date) =>
        Date(Of(facts, package), "finished", date) is { } finished && finished <= date;

    public static IEnumerable<Report> Of(Facts facts, Package package) =>
        facts.Status.Where(report => report.Package == package.Code);
}
