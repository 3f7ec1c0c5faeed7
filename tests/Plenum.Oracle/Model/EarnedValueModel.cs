using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Model;

/// <summary>
/// A question for the accounts of a project. <paramref name="At"/> null: at the status date, else at the last period
/// with status or actual cost. <paramref name="By"/>: account, element, unit, cost_element, package or a grouping.
/// </summary>
public sealed record Question(
    DateOnly? At = null,
    string By = "account",
    int? Level = null,
    bool Period = false
);

/// <summary>The answer: the period end at which the measures were taken (null before the first), and the rows.</summary>
public sealed record Answer(DateOnly? At, string By, IReadOnlyList<Row> Rows)
{
    public Row Row(string code) => Rows.Single(row => row.Code == code);
}

/// <summary>
/// Earned value of a project from its text tables, by the published definitions, in exact fractions and without
/// regard to speed. Written to be checked against, independently of the product's own engine.
/// </summary>
public sealed class EarnedValueModel
{
    private readonly IReadOnlyList<Piece> pieces;

    public EarnedValueModel(TextProject project)
    {
        Facts = new FactReader(project).Read();
        pieces = Piece.All(Facts);
    }

    public Facts Facts { get; }

    /// <summary>Answers a question; a grouping that the project does not have is an error.</summary>
    public Answer Accounts(Question question)
    {
        var now = PeriodAt(question.At);
        var rowSum = new RowSum(Facts, now, question.Period);
        var rows = new Cuts(Facts, pieces, rowSum).Rows(question.By, question.Level);
        return new Answer(now == 0 ? null : Facts.Periods[now - 1].End, question.By, rows);
    }

    public IReadOnlyList<TreeRow> Tree() => Model.Tree.Rows(Facts);

    /// <summary>The number of the last period that ends on or before the date; 0 when there is none.</summary>
    private int PeriodAt(DateOnly? date)
    {
        if (date is null && Facts.StatusDate is null)
        {
            return Facts.LastPeriodReported ?? 0;
        }

        var day = date ?? Facts.StatusDate;
        return Facts.Periods.LastOrDefault(period => period.End <= day)?.Number ?? 0;
    }
}
