using Plenum.Core.Breakdown;
using Plenum.Core.People;

namespace Plenum.Workbench.Maps;

/// <summary>
/// Which control account holds all of an element, from the level on which outlines of accounts begin. That is the
/// level of the account's element; and one further down if any element of that level has several accounts, so that
/// sisters are outlined on the same level whether they have one account or more.
/// </summary>
internal static class AccountOutlines
{
    private const int NoPackage = -2;
    private const int NotOne = -1;

    /// <summary>For each element the row of the account that has all its packages; −1 where none is outlined.</summary>
    public static int[] Of(ElementTree tree, AccountPlacement placement)
    {
        var first = FirstLevels(tree, placement);
        var holder = Holders(tree, placement.AccountOfPackage);
        for (var row = 0; row < holder.Length; row++)
        {
            if (holder[row] < 0 || tree.Level[row] < first[holder[row]])
            {
                holder[row] = NotOne;
            }
        }

        return holder;
    }

    /// <summary>The account that all packages of an element are in.</summary>
    private static int[] Holders(ElementTree tree, ReadOnlySpan<int> accountOfPackage)
    {
        var holder = new int[tree.Count];
        holder.AsSpan().Fill(NoPackage);
        for (var row = holder.Length - 1; row >= 0; row--)
        {
            if (tree.PackageOfRow[row] is var package and >= 0)
            {
                holder[row] = accountOfPackage[package];
            }

            if (tree.Parent[row] is var parent and >= 0 && holder[row] != NoPackage)
            {
                holder[parent] =
                    holder[parent] == NoPackage || holder[parent] == holder[row]
                        ? holder[row]
                        : NotOne;
            }
        }

        return holder;
    }

    /// <summary>For each account the level on which its outline begins.</summary>
    private static int[] FirstLevels(ElementTree tree, AccountPlacement placement)
    {
        var isShared = new bool[tree.Depth + 1];
        for (var row = 0; row < tree.Count; row++)
        {
            if (placement.AccountsOfElement[row].Length > 1)
            {
                isShared[tree.Level[row]] = true;
            }
        }

        var first = new int[placement.Accounts.Count];
        for (var account = 0; account < first.Length; account++)
        {
            var row = placement.ElementRow[account];
            var level = tree.Level[row];
            first[account] = isShared[level] && tree.HasChildren(row) ? level + 1 : level;
        }

        return first;
    }
}
