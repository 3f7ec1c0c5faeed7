using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.People;

namespace Plenum.Core.Baseline.Audit;

/// <summary>A package has a large part of the whole budget.</summary>
public sealed class PackageTooLargeRule(
    PackageBaseline baseline,
    Func<long> projectBudget,
    AuditThresholds thresholds,
    Func<long, string> money
) : PackageRule(baseline)
{
    public override string Name => "package_too_large";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A package with a large part of the budget is a project of its own; nobody sees inside.";

    public override string Remedy => "Split it.";

    public override string Source => "common practice";

    protected override string? Message(int package)
    {
        var budget = Baseline.TotalBudget[package];
        var all = projectBudget();
        return
            (Int128)budget * Fraction.Whole > (Int128)all * thresholds.PackageShare.BasisPoints
            && Baseline.Count >= Fraction.Whole / Math.Max(1, thresholds.PackageShare.BasisPoints)
            ? $"{NameOf(package)} has {money(budget)}, {MoneyText.Percent(budget, all)} of the project."
            : null;
    }
}

/// <summary>A package has so few hours that watching it costs more than it tells.</summary>
public sealed class PackageTooSmallRule(PackageBaseline baseline, AuditThresholds thresholds)
    : PackageRule(baseline)
{
    public override string Name => "package_too_small";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A package of less than a day costs more to plan and report than it tells.";

    public override string Remedy => "Merge it with a neighbour.";

    public override string Source => "common practice (8 to 80 hours)";

    protected override string? Message(int package) =>
        Baseline.BudgetHours[package] is var hours and > 0 && hours < thresholds.PackageHours * 100L
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{NameOf(package)} has {hours / 100m:0.##} h."
            )
            : null;
}

/// <summary>A work package without budget.</summary>
public sealed class PackageWithoutBudgetRule(PackageBaseline baseline) : PackageRule(baseline)
{
    public override string Name => "package_without_budget";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "Work without a budget earns nothing and weighs nothing: what it costs shows as an overrun of others.";

    public override string Remedy =>
        "Give it a budget, or take it into the package that pays for it.";

    public override string Source => "SAE EIA-748 guideline 10";

    protected override string? Message(int package) =>
        Baseline.TotalBudget[package] == 0
        && Baseline.Tree.Kind(Baseline.Tree.PackageRows[package]) == ElementTable.WorkPackage
            ? $"{NameOf(package)} has no budget."
            : null;
}

/// <summary>An account has more packages, or more of the budget, than one manager can watch.</summary>
public sealed class AccountSizeRule(
    PackageBaseline baseline,
    AccountPlacement placement,
    AuditThresholds thresholds,
    Func<long, string> money
) : AuditRule
{
    public override string Name => "account_too_large";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A control account is as large as one manager can watch: some dozens of packages and a small part of the budget.";

    public override string Remedy => "Divide it among accounts further down.";

    public override string Source => "common practice";

    public override IEnumerable<Finding> Run()
    {
        var count = placement.Accounts.Count;
        var packages = new int[count];
        var budgets = new long[count];
        var all = 0L;
        for (var package = 0; package < baseline.Count; package++)
        {
            all += baseline.TotalBudget[package];
            if (placement.AccountOfPackage[package] is var account and >= 0)
            {
                packages[account]++;
                budgets[account] += baseline.TotalBudget[package];
            }
        }

        for (var account = 0; account < count; account++)
        {
            var code = placement.Accounts.Codes[account]!;
            if (packages[account] > thresholds.AccountPackages)
            {
                yield return Found(
                    code,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Account {code} has {packages[account]} packages."
                    )
                );
            }

            if (
                count >= Fraction.Whole / Math.Max(1, thresholds.AccountShare.BasisPoints)
                && (Int128)budgets[account] * Fraction.Whole
                    > (Int128)all * thresholds.AccountShare.BasisPoints
            )
            {
                yield return Found(
                    code,
                    $"Account {code} has {money(budgets[account])}, {MoneyText.Percent(budgets[account], all)} of the project."
                );
            }
        }
    }
}
