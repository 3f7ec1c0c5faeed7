using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands.People;

/// <summary>
/// The control accounts while a command works on them, and in which account each package is. A command says where the
/// packages belong; where the rule of placement does not bring them there, they name their account. Ids throughout; 0
/// for none. Time: packages and accounts.
/// </summary>
internal sealed class DraftAccounts
{
    private readonly EditDraft draft;
    private readonly ElementTree tree;
    private readonly int[] units;
    private readonly int[] rowOfPackage;

    public DraftAccounts(EditDraft draft)
    {
        this.draft = draft;
        tree = draft.Before.Tree;
        units = tree.Inherited(ElementTable.Unit);
        rowOfPackage = PackageRows();
        Before = Placed();
    }

    /// <summary>The account of each package when the command began.</summary>
    public int[] Before { get; }

    /// <summary>The unit that a package has or inherits.</summary>
    public int UnitOf(int package) =>
        units[tree.PackageRows[package]] is var unit && unit == Cell.NoInt ? 0 : unit;

    /// <summary>Numbers of the packages that were in an account.</summary>
    public IEnumerable<int> PackagesOf(int account) =>
        Enumerable.Range(0, Before.Length).Where(package => Before[package] == account);

    public int ElementOf(int account) => draft.Reference(AccountTable.Element, account);

    public string Code(int account) => draft.CodeOf(AccountTable.Definition, account);

    /// <summary>The element lies on a package or above it.</summary>
    public bool Covers(int element, int package) =>
        tree.Elements.RowOf(element) is var row and >= 0
        && row <= tree.PackageRows[package]
        && tree.PackageRows[package] < tree.SubtreeEnd[row];

    /// <summary>The nearest element that two elements have in common.</summary>
    public int Common(int one, int other)
    {
        var row = tree.Elements.RowOf(one);
        var second = tree.Elements.RowOf(other);
        while (second < row || second >= tree.SubtreeEnd[row])
        {
            row = tree.Parent[row];
        }

        return tree.Elements.Ids[row];
    }

    /// <summary>
    /// Sees that each package is where it belongs: lets it name its account where the rule of placement would bring it
    /// elsewhere.
    /// </summary>
    /// <param name="wanted">Package, account before, account by the rule; gives the account in which it belongs.</param>
    /// <exception cref="EditException">A package would name an account that does not stand above it.</exception>
    public void Settle(Func<int, int, int, int> wanted)
    {
        var now = Placed();
        for (var package = 0; package < now.Length; package++)
        {
            var account = wanted(package, Before[package], now[package]);
            if (account == now[package] || account == 0)
            {
                continue;
            }

            if (!Covers(ElementOf(account), package))
            {
                throw new EditException(
                    $"{Say(package)} is in {Code(account)}, which would no longer stand above it.",
                    "an element above all packages of the account"
                );
            }

            Name(package, account);
        }
    }

    /// <summary>Lets a package name an account; 0 for none.</summary>
    public void Name(int package, int account)
    {
        if (rowOfPackage[package] == 0)
        {
            if (account == 0)
            {
                return;
            }

            rowOfPackage[package] = draft.Add(PackageTable.Definition);
            draft.SetReference(
                PackageTable.Package,
                rowOfPackage[package],
                tree.Elements.Ids[tree.PackageRows[package]]
            );
        }

        if (account == 0)
        {
            draft.Set(PackageTable.Account, rowOfPackage[package], null);
        }
        else
        {
            draft.SetReference(PackageTable.Account, rowOfPackage[package], account);
        }
    }

    /// <summary>Packages that name an account, by number.</summary>
    public IEnumerable<int> Naming(int account) =>
        Enumerable.Range(0, rowOfPackage.Length).Where(package => Named(package) == account);

    /// <summary>
    /// An account contains no other account, and one element and one unit meet once.
    /// Source: GAO-16-89G App. III; SAE EIA-748 guideline 5.
    /// </summary>
    /// <exception cref="EditException">It would, and it was not asked for in spite of that.</exception>
    public void NeedClear(int account, bool anyway)
    {
        if (anyway)
        {
            return;
        }

        var element = ElementOf(account);
        var row = tree.Elements.RowOf(element);
        var end = row < 0 ? row : tree.SubtreeEnd[row];
        var unit = draft.Reference(AccountTable.Unit, account);
        foreach (var other in All().Where(other => other != account))
        {
            var at = tree.Elements.RowOf(ElementOf(other));
            if (at == row && row >= 0)
            {
                if (draft.Reference(AccountTable.Unit, other) == unit)
                {
                    throw new EditException(
                        $"{Code(other)} stands at this crossing already: one element and one unit meet in one account.",
                        "a crossing that has no account, or the two merged"
                    );
                }
            }
            else if (at > row && at < end || at >= 0 && at < row && row < tree.SubtreeEnd[at])
            {
                throw new EditException(
                    $"{Code(other)} stands {(at > row ? "below" : "above")} {Elements.Say(draft.Before, element)}: an account "
                        + "contains no other account. Merge the two, or do it anyway and the audit keeps reminding.",
                    "a crossing with no account above or below it"
                );
            }
        }
    }

    /// <summary>A code for an account at a crossing, like those that are there: element, sign, unit; or numbered on.</summary>
    public string CodeFor(int element, int unit)
    {
        var part = draft.CodeOf(ElementTable.Definition, element);
        var side = draft.CodeOf(UnitTable.Definition, unit);
        var signs = All()
            .Select(SignOf)
            .OfType<string>()
            .CountBy(sign => sign, StringComparer.Ordinal)
            .OrderByDescending(pair => pair.Value)
            .ToList();
        if (
            signs.Count == 0
            && All().LastOrDefault() is var last and > 0
            && CodeGiver.NumberOf(Code(last)) is var number and > 0
        )
        {
            var digits = Code(last).Length - Code(last).TrimEnd([.. "0123456789"]).Length;
            var stem = Code(last)[..^digits];
            string next;
            do
            {
                next = stem + (++number).ToString("D" + digits, null);
            } while (draft.IdOf(AccountTable.Definition, next) != 0);
            return next;
        }

        var code = part + (signs.Count == 0 ? "-" : signs[0].Key) + side;
        for (var twin = 2; draft.IdOf(AccountTable.Definition, code) != 0; twin++)
        {
            code = $"{part}{(signs.Count == 0 ? "-" : signs[0].Key)}{side}-{twin}";
        }

        return code;
    }

    /// <summary>Its code is made of its element and its unit.</summary>
    public bool FollowsPattern(int account) => SignOf(account) is not null;

    /// <summary>Code and name of a package.</summary>
    public string Say(int package) =>
        $"{tree.Code(tree.PackageRows[package])} {tree.Name(tree.PackageRows[package])}";

    /// <exception cref="EditException">A row is no longer there.</exception>
    public static void Need(
        EditDraft draft,
        TableDefinition table,
        string what,
        params ReadOnlySpan<int> ids
    )
    {
        foreach (var id in ids)
        {
            if (!draft.Has(table, id))
            {
                throw new EditException(
                    $"This {what} is no longer there; somebody has removed it.",
                    $"{what} that is there"
                );
            }
        }
    }

    private string? SignOf(int account)
    {
        var code = Code(account);
        var part = draft.CodeOf(ElementTable.Definition, ElementOf(account));
        var side = draft.CodeOf(
            UnitTable.Definition,
            draft.Reference(AccountTable.Unit, account)
        );
        return
            code.Length >= part.Length + side.Length
            && code.StartsWith(part, StringComparison.Ordinal)
            && code.EndsWith(side, StringComparison.Ordinal)
            ? code[part.Length..^side.Length]
            : null;
    }

    private IEnumerable<int> All()
    {
        var table = draft.Before[AccountTable.Definition];
        var edit = draft.Edits.GetValueOrDefault(AccountTable.Definition);
        return edit is null
            ? table.Ids.ToArray()
            : [.. table.Ids.ToArray().Where(edit.Has), .. edit.Added];
    }

    private int[] Placed()
    {
        var named = new int[rowOfPackage.Length];
        for (var package = 0; package < named.Length; package++)
        {
            named[package] = Named(package) is var account and > 0 ? account : Cell.NoInt;
        }

        var accounts = draft.Edits.TryGetValue(AccountTable.Definition, out var edit)
            ? edit.Finish().Table
            : draft.Before[AccountTable.Definition];
        var placement = new AccountPlacement(tree, accounts, named);
        return Array.ConvertAll(
            placement.AccountOfPackage.ToArray(),
            row => row < 0 ? 0 : accounts.Ids[row]
        );
    }

    private int Named(int package) =>
        rowOfPackage[package] == 0
            ? 0
            : draft.Reference(PackageTable.Account, rowOfPackage[package]);

    private int[] PackageRows()
    {
        var rows = new int[tree.PackageCount];
        var table = draft.Before[PackageTable.Definition];
        var edit = draft.Edits.GetValueOrDefault(PackageTable.Definition);
        var owners = table.Ints(PackageTable.Package);
        for (var row = 0; row < table.Count; row++)
        {
            Note(table.Ids[row], owners[row]);
        }

        foreach (var id in edit is null ? [] : (int[])[.. edit.Added])
        {
            Note(id, draft.Reference(PackageTable.Package, id));
        }

        return rows;

        void Note(int id, int element)
        {
            if (
                (edit is null || edit.Has(id))
                && tree.PackageOfId(element) is var package and >= 0
            )
            {
                rows[package] = id;
            }
        }
    }
}
