namespace Plenum.Oracle.Model;

/// <summary>Which control account a package is in, and of which unit a package is.</summary>
public static class AccountOf
{
    /// <summary>
    /// The account that the package names; else, at the nearest of the package and its ancestors that has accounts,
    /// the one of the package's unit, or the only one; else none.
    /// </summary>
    public static Account? Package(Facts facts, Package package)
    {
        if (package.NamedAccount != "")
        {
            return facts.Accounts.Single(account => account.Code == package.NamedAccount);
        }

        foreach (var element in facts.SelfAndAncestors(package.Code))
        {
            var here = facts.Accounts.Where(account => account.Element == element.Code).ToList();
            if (here.Count > 0)
            {
                var unit = Unit(facts, package);
                var ofUnit = here.Find(account => account.Unit == unit);
                return ofUnit ?? (here.Count == 1 ? here[0] : null);
            }
        }

        return null;
    }

    /// <summary>The package's own unit or that of its nearest ancestor that has one; empty without any.</summary>
    public static string Unit(Facts facts, Package package) =>
        facts.SelfAndAncestors(package.Code).FirstOrDefault(element => element.Unit != "")?.Unit
        ?? "";
}
