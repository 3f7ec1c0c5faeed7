using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Audit;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.People.Audit;

/// <summary>A control account's element lies above another's, or two accounts meet at one element and unit.</summary>
public sealed class AccountOverlapRule(ElementTree tree, AccountPlacement placement) : AuditRule
{
    public override string Name => "account_overlap";

    public override Severity Severity => Severity.Error;

    public override string Explanation =>
        "A control account is where one element meets one unit; it contains no other account, or the same work would "
        + "be watched twice.";

    public override string Remedy => "Move one of the accounts, or merge them.";

    public override string Source => "GAO-16-89G App. III, SAE EIA-748 guidelines 5, 17, 18";

    public override IEnumerable<Finding> Run()
    {
        var accounts = placement.Accounts;
        var units = accounts.Ints(AccountTable.Unit).ToArray();
        var nearest = new int[tree.Count];
        for (var row = 0; row < tree.Count; row++)
        {
            int[] here = placement.AccountsOfElement[row].ToArray();
            var above = tree.Parent[row] < 0 ? -1 : nearest[tree.Parent[row]];
            if (here.Length > 0 && above >= 0)
            {
                yield return Found(
                    accounts.Codes[here[0]]!,
                    $"Account {accounts.Codes[here[0]]} on {tree.Code(row)} lies below account "
                        + $"{accounts.Codes[above]} on {tree.Code(placement.ElementRow[above])}."
                );
            }

            for (var i = 1; i < here.Length; i++)
            {
                var unit = units[here[i]];
                var twin = Array.FindIndex(here, 0, i, other => units[other] == unit);
                if (twin >= 0)
                {
                    yield return Found(
                        accounts.Codes[here[i]]!,
                        $"Accounts {accounts.Codes[here[twin]]} and {accounts.Codes[here[i]]} stand on the same "
                            + $"element {tree.Code(row)} and unit."
                    );
                }
            }

            nearest[row] = here.Length > 0 ? here[0] : above;
        }
    }
}

/// <summary>A package is in no control account.</summary>
public sealed class PackageWithoutAccountRule(ElementTree tree, AccountPlacement placement)
    : ElementRule(tree)
{
    public override string Name => "package_without_account";

    public override Severity Severity => Severity.Error;

    public override string Explanation =>
        "Work outside every control account has no manager who watches its cost.";

    public override string Remedy =>
        "Name its account, or place one where its part meets its unit.";

    public override string Source => "SAE EIA-748 guideline 5; GAO-16-89G App. III";

    protected override string? Message(int row) =>
        Tree.PackageOfRow[row] is var package and >= 0 && placement.AccountOfPackage[package] < 0
            ? $"{Tree.Name(row)} is in no control account."
            : null;
}

/// <summary>The unit of a package is not that of its account.</summary>
public sealed class AccountUnitRule(ElementTree tree, AccountPlacement placement)
    : ElementRule(tree)
{
    private readonly int[] unitOf = tree.Inherited(ElementTable.Unit);

    public override string Name => "account_of_another_unit";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A control account belongs to one unit; all that is in it is that unit's work.";

    public override string Remedy =>
        "Move the package to an account of its unit, or correct its unit.";

    public override string Source => "SAE EIA-748 guideline 18";

    protected override string? Message(int row)
    {
        var account = Tree.PackageOfRow[row] is var package and >= 0
            ? placement.AccountOfPackage[package]
            : -1;
        return
            account >= 0
            && unitOf[row] != Cell.NoInt
            && unitOf[row] != placement.Accounts.Ints(AccountTable.Unit)[account]
            ? $"{Tree.Name(row)} is in account {placement.Accounts.Codes[account]}, which belongs to another unit."
            : null;
    }
}

/// <summary>Nobody is in charge of a package.</summary>
public sealed class PackageWithoutPersonRule(ElementTree tree) : ElementRule(tree)
{
    private readonly int[] persons = tree.Inherited(ElementTable.Person);

    public override string Name => "package_without_person";

    public override Severity Severity => Severity.Warning;

    public override string Explanation => "One person answers for each part of the work.";

    public override string Remedy =>
        "Name the person in charge, on the package or on an element above it.";

    public override string Source => "common practice";

    protected override string? Message(int row) =>
        Tree.PackageOfRow[row] >= 0 && persons[row] == Cell.NoInt
            ? $"Nobody is in charge of {Tree.Name(row)}."
            : null;
}
