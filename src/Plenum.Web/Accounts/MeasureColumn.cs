using Plenum.Workbench.Questions;

namespace Plenum.Web.Accounts;

/// <summary>How a column's cells are drawn.</summary>
public enum ColumnKind
{
    Text,
    Amount,
    Variance,
    Noise,
    Index,
    Factor,
    Percent,
    Count,
    Periods,
    Date,
    Trend,
    Offsets,
}

/// <summary>A column of the accounts table.</summary>
/// <param name="Id">Its word in addresses; the same as in the answers of the command line where there is one.</param>
/// <param name="Name">Name in the list of columns.</param>
/// <param name="Head">Heading, short.</param>
/// <param name="Letters">The trade's letters, the second line of the heading.</param>
/// <param name="Says">What it means, in a sentence.</param>
/// <param name="Kind">How its cells are drawn.</param>
/// <param name="Value">Value for sorting and copying: text, number, date, or null.</param>
public sealed record MeasureColumn(
    string Id,
    string Name,
    string Head,
    string Letters,
    string Says,
    ColumnKind Kind,
    Func<TableRow, object?> Value
)
{
    /// <summary>Judged against the limits: the variance as a share of what, in major units.</summary>
    public Func<MeasureRow, decimal>? JudgedBy { get; init; }

    public bool IsText => Kind == ColumnKind.Text;
}

/// <summary>A row of the table with what does not come from its measures.</summary>
/// <param name="Row">Its measures.</param>
/// <param name="Manager">Name of the account's manager or the package's person in charge.</param>
/// <param name="HidesCost">Net cost variance within the threshold, what was lost beyond it.</param>
/// <param name="HidesSchedule">The same for schedule.</param>
/// <param name="Trend">Indices over the last periods.</param>
/// <param name="Certainty">How closely its variances are known; null where that is not asked for.</param>
public sealed record TableRow(
    MeasureRow Row,
    string? Manager,
    bool HidesCost,
    bool HidesSchedule,
    IReadOnlyList<TrendPoint>? Trend,
    CertaintyRow? Certainty = null
)
{
    public bool IsFlagged => HidesCost || HidesSchedule;

    /// <summary>The row only makes the cut tie out.</summary>
    public bool IsRest => Row.Code.StartsWith('*');
}
