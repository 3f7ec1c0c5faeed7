using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.People;

namespace Plenum.Core.Baseline.Audit;

/// <summary>The technique of a package does not suit how long it takes, or lacks what it measures by.</summary>
public sealed class TechniqueRule(
    PackageBaseline baseline,
    PeriodTimeline periods,
    Func<int, bool> hasItems
) : PackageRule(baseline)
{
    public override string Name => "technique_unsuited";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "0/100 is for work within one reporting period, 50/50 within two, other start/finish shares within three: "
        + "longer, and the status says nothing for months. Milestones, units and items need something to count.";

    public override string Remedy =>
        "Split the package, or measure it by milestones, units or items.";

    public override string Source => "GAO-16-89G App. III (rules); spans from memory";

    protected override string? Message(int package) =>
        Complaint(package) is { } complaint ? $"{NameOf(package)} {complaint}." : null;

    private string? Complaint(int package)
    {
        var technique = Baseline.Technique[package];
        if (technique == Cell.NoInt)
        {
            return Baseline.TotalBudget[package] > 0
                ? "has no earned value technique and will never earn"
                : null;
        }

        if (technique == TechniqueCodec.Milestones && Baseline.MilestonesOf[package].Length == 0)
        {
            return "is measured by milestones and has none";
        }

        if (technique == TechniqueCodec.Items && !hasItems(package))
        {
            return "is measured by items and has none";
        }

        if (!TechniqueCodec.IsStartFinish(technique) || !Baseline.IsScheduled(package))
        {
            return null;
        }

        var spanned = periods.Spanned(Baseline.Start[package], Baseline.Finish[package]);
        var most = technique switch
        {
            0 or 100 => 1,
            50 => 2,
            _ => 3,
        };
        return spanned > most
            ? $"runs over {spanned} periods and is measured by {TechniqueCodec.Instance.Format(technique)}"
            : null;
    }
}

/// <summary>A package has a budget and no baseline dates.</summary>
public sealed class PackageWithoutDatesRule(PackageBaseline baseline) : PackageRule(baseline)
{
    public override string Name => "package_without_dates";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "A budget without dates is never planned: it stays out of the time-phased baseline.";

    public override string Remedy => "Give the package its baseline start and finish.";

    public override string Source => "SAE EIA-748 guideline 8";

    protected override string? Message(int package) =>
        Baseline.TotalBudget[package] > 0
        && !Baseline.IsScheduled(package)
        && Baseline.Technique[package] != TechniqueCodec.Apportioned
            ? $"{NameOf(package)} has a budget and lacks a baseline start or finish."
            : null;
}

/// <summary>Level of effort is a large part of the budget.</summary>
public sealed class LevelOfEffortShareRule(PackageBaseline baseline, AuditThresholds thresholds)
    : AuditRule
{
    public override string Name => "level_of_effort_share";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Level of effort earns what was planned whatever happens; much of it hides how things are.";

    public override string Remedy => "Measure by output what has one.";

    public override string Source => "GAO-20-195G (above 15 %: look closer)";

    public override IEnumerable<Finding> Run()
    {
        var effort = 0L;
        var all = 0L;
        for (var package = 0; package < baseline.Count; package++)
        {
            all += baseline.TotalBudget[package];
            effort +=
                baseline.Technique[package] == TechniqueCodec.LevelOfEffort
                    ? baseline.TotalBudget[package]
                    : 0;
        }

        if ((Int128)effort * Fraction.Whole > (Int128)all * thresholds.LevelOfEffort.BasisPoints)
        {
            yield return Found(
                baseline.Tree.Code(0),
                $"{MoneyText.Percent(effort, all)} of the budget is level of effort."
            );
        }
    }
}

/// <summary>What the budget ledger distributed to an account is not what its packages have.</summary>
public sealed class LedgerRule(
    PackageBaseline baseline,
    AccountPlacement placement,
    Table postings,
    Func<long, string> money
) : AuditRule
{
    public override string Name => "ledger_differs_from_packages";

    public override Severity Severity => Severity.Error;

    public override string Explanation =>
        "The budget of a control account is the sum of its packages; budget moves only by a posting that names its change.";

    public override string Remedy =>
        "Post the difference under the change that authorises it, or correct the packages.";

    public override string Source => "SAE EIA-748 guidelines 11 and 31";

    public override IEnumerable<Finding> Run()
    {
        if (postings.Count == 0)
        {
            yield break;
        }

        var packages = new long[placement.Accounts.Count];
        for (var package = 0; package < baseline.Count; package++)
        {
            if (placement.AccountOfPackage[package] is var account and >= 0)
            {
                packages[account] += baseline.TotalBudget[package];
            }
        }

        var distributed = BudgetLedger.Distributed(postings, placement.Accounts);
        for (var account = 0; account < packages.Length; account++)
        {
            if (distributed[account] != packages[account])
            {
                yield return Found(
                    placement.Accounts.Codes[account]!,
                    $"{money(distributed[account])} were posted to account {placement.Accounts.Codes[account]} and its "
                        + $"packages have {money(packages[account])}."
                );
            }
        }
    }
}
