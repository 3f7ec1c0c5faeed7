using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.People;

/// <summary>
/// In which control account each package is: the one that it names; else, at the nearest element from the package
/// upwards that has accounts, the one of the package's unit; else that element's only one.
/// </summary>
public sealed class AccountPlacement
{
    private readonly int[] accountOfPackage;
    private readonly int[] elementRow;

    /// <param name="tree">The breakdown.</param>
    /// <param name="accounts">The control accounts.</param>
    /// <param name="namedAccount">For each package the id of the account that it names, or <see cref="Cell.NoInt"/>.</param>
    public AccountPlacement(ElementTree tree, Table accounts, ReadOnlySpan<int> namedAccount)
    {
        Accounts = accounts;
        elementRow = new int[accounts.Count];
        var elementIds = accounts.Ints(AccountTable.Element);
        for (var account = 0; account < accounts.Count; account++)
        {
            elementRow[account] = tree.Elements.RowOf(elementIds[account]);
        }

        AccountsOfElement = RowGroups.By(elementRow, tree.Count);
        var nearest = NearestWithAccounts(tree);
        var units = tree.Inherited(ElementTable.Unit);
        accountOfPackage = new int[tree.PackageCount];
        for (var package = 0; package < accountOfPackage.Length; package++)
        {
            var row = tree.PackageRows[package];
            accountOfPackage[package] =
                namedAccount[package] != Cell.NoInt
                    ? accounts.RowOf(namedAccount[package])
                    : AtElement(nearest[row], units[row]);
        }
    }

    /// <summary>The table of accounts, to whose rows the numbers here refer.</summary>
    public Table Accounts { get; }

    /// <summary>The accounts that stand on an element, by its position.</summary>
    public RowGroups AccountsOfElement { get; }

    /// <summary>For each package the row of its account; −1 if it is in none.</summary>
    public ReadOnlySpan<int> AccountOfPackage => accountOfPackage;

    /// <summary>For each account the position of its element.</summary>
    public ReadOnlySpan<int> ElementRow => elementRow;

    /// <summary>True if an account stands on the element or on an ancestor of it.</summary>
    public bool Covers(ElementTree tree, int account, int row) =>
        elementRow[account] <= row && row < tree.SubtreeEnd[elementRow[account]];

    private int AtElement(int row, int unit)
    {
        if (row < 0)
        {
            return -1;
        }

        var candidates = AccountsOfElement[row];
        var units = Accounts.Ints(AccountTable.Unit);
        foreach (var account in candidates)
        {
            if (units[account] == unit)
            {
                return account;
            }
        }

        return candidates.Length == 1 ? candidates[0] : -1;
    }

    private int[] NearestWithAccounts(ElementTree tree)
    {
        var nearest = new int[tree.Count];
        for (var row = 0; row < nearest.Length; row++)
        {
            nearest[row] =
                AccountsOfElement[row].Length > 0 ? row
                : tree.Parent[row] < 0 ? -1
                : nearest[tree.Parent[row]];
        }

        return nearest;
    }
}
