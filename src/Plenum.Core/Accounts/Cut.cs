using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Accounts;

/// <summary>
/// A way to see the whole project as rows: which row each package and each account's own charges belong to. Rows
/// stand in depth-first order, so that parents roll up; rows that are there only to make the cut tie out have codes
/// that begin with an asterisk and stand last.
/// </summary>
public sealed class Cut
{
    public const string Total = "*total";
    public const string NoAccount = "*no_account";
    public const string UndistributedBudget = "*undistributed";
    public const string NoGroup = "*no_group";
    public const string AccountCharges = "*account_charges";

    /// <summary>Nowhere: outside the part of the project that is asked for.</summary>
    public const int Outside = -1;

    internal Cut(string by, IReadOnlyList<CutRow> rows, int[] rowOfPackage, int[] rowOfCharges)
    {
        By = by;
        Rows = rows;
        RowOfPackage = rowOfPackage;
        RowOfCharges = rowOfCharges;
    }

    /// <summary>What it is by: account, element, unit, cost_element, package, or the name of a grouping.</summary>
    public string By { get; }

    public IReadOnlyList<CutRow> Rows { get; }

    /// <summary>For each package its row, or <see cref="Outside"/>. In the cut by cost element 0 for every package in it.</summary>
    internal int[] RowOfPackage { get; }

    /// <summary>For each account the row of what is charged to it as such, or <see cref="Outside"/>.</summary>
    internal int[] RowOfCharges { get; }

    internal bool ByCostElement { get; init; }

    /// <summary>The only cost element that counts; null for all.</summary>
    internal int? OnlyCostElement { get; init; }

    /// <summary>The cost elements that count, as a range.</summary>
    internal (int First, int End) CostElementRange =>
        OnlyCostElement is { } only ? (only, only + 1) : (0, CostElements.Count);

    /// <summary>The row that takes the undistributed budget, or <see cref="Outside"/> when only a part is asked for.</summary>
    internal int RowOfUndistributed { get; init; } = Outside;

    /// <summary>Only a part of the project is asked for: rows of it that have nothing there are left out.</summary>
    internal bool IsOfAPart { get; init; }

    /// <summary>
    /// Whether a row is left out while it is empty: one that only makes the cut tie out, one that has nothing in the
    /// part that is asked for, and a cost element that the project never uses.
    /// </summary>
    public bool DropsWhenEmpty(int row, TimePhased source) =>
        Rows[row].IsRest || IsOfAPart || (ByCostElement && !source.Uses(row));
}

/// <summary>A row of a cut.</summary>
/// <param name="Code">Its code; begins with an asterisk in rows that make the cut tie out.</param>
/// <param name="Name">Its name.</param>
/// <param name="Level">Depth in its tree, from 0; 0 in flat cuts.</param>
public readonly record struct CutRow(string Code, string Name, int Level)
{
    /// <summary>True for a row that only makes the cut tie out.</summary>
    public bool IsRest => Code.StartsWith('*');
}
