namespace Plenum.Core.Accounts;

/// <summary>
/// Everything that is summed for a row of a cut, in minor units of the project's currency, to date. Every field is
/// additive over packages, accounts, elements, units and cost elements. Source: SAE EIA-748 guidelines 5, 17, 18, 25.
/// </summary>
public record struct MeasureSums
{
    /// <summary>Budget at completion.</summary>
    public long BudgetAtCompletion { get; set; }

    /// <summary>Planned value, PV (BCWS).</summary>
    public long PlannedValue { get; set; }

    /// <summary>Earned value, EV (BCWP).</summary>
    public long EarnedValue { get; set; }

    /// <summary>Actual cost, AC (ACWP).</summary>
    public long ActualCost { get; set; }

    /// <summary>Committed by orders and subcontracts.</summary>
    public long Committed { get; set; }

    /// <summary>Estimate to complete by the managers: EAC − AC.</summary>
    public long Remaining { get; set; }

    /// <summary>Planned value at the end of the period before; 0 unless the period alone is asked for.</summary>
    public long PlannedBefore { get; set; }

    /// <inheritdoc cref="PlannedBefore"/>
    public long EarnedBefore { get; set; }

    /// <inheritdoc cref="PlannedBefore"/>
    public long ActualBefore { get; set; }

    /// <inheritdoc cref="PlannedBefore"/>
    public long CommittedBefore { get; set; }

    /// <summary>Earned value three periods before.</summary>
    public long EarnedThreeBefore { get; set; }

    /// <summary>Actual cost three periods before.</summary>
    public long ActualThreeBefore { get; set; }

    /// <summary>Sum of the favourable cost variances of the packages, at least 0.</summary>
    public long CostGained { get; set; }

    /// <summary>Sum of the unfavourable cost variances of the packages, at most 0.</summary>
    public long CostLost { get; set; }

    /// <summary>Sum of the favourable schedule variances of the packages, at least 0.</summary>
    public long ScheduleGained { get; set; }

    /// <summary>Sum of the unfavourable schedule variances of the packages, at most 0.</summary>
    public long ScheduleLost { get; set; }

    /// <summary>Number of packages.</summary>
    public int Packages { get; set; }

    /// <summary>Estimate at completion by the managers.</summary>
    public readonly long EstimateAtCompletion => ActualCost + Remaining;

    /// <summary>True if nothing that is shown of the row is other than zero.</summary>
    public readonly bool IsEmpty =>
        BudgetAtCompletion == 0
        && ActualCost == 0
        && ActualBefore == 0
        && Remaining == 0
        && Committed == CommittedBefore
        && CostGained == 0
        && ScheduleGained == 0
        && CostLost == 0
        && ScheduleLost == 0;

    public void Add(in MeasureSums other)
    {
        BudgetAtCompletion += other.BudgetAtCompletion;
        PlannedValue += other.PlannedValue;
        EarnedValue += other.EarnedValue;
        ActualCost += other.ActualCost;
        Committed += other.Committed;
        Remaining += other.Remaining;
        PlannedBefore += other.PlannedBefore;
        EarnedBefore += other.EarnedBefore;
        ActualBefore += other.ActualBefore;
        CommittedBefore += other.CommittedBefore;
        EarnedThreeBefore += other.EarnedThreeBefore;
        ActualThreeBefore += other.ActualThreeBefore;
        CostGained += other.CostGained;
        CostLost += other.CostLost;
        ScheduleGained += other.ScheduleGained;
        ScheduleLost += other.ScheduleLost;
        Packages += other.Packages;
    }

    /// <summary>Takes over what another row's packages gained and lost.</summary>
    internal void TakeOffsets(in MeasureSums other)
    {
        CostGained = other.CostGained;
        CostLost = other.CostLost;
        ScheduleGained = other.ScheduleGained;
        ScheduleLost = other.ScheduleLost;
        Packages = other.Packages;
    }

    /// <summary>
    /// Books this row's own variances as gained or lost: done once, on the smallest thing that has variances, before
    /// anything is summed.
    /// </summary>
    internal void BookOffsets()
    {
        var cost = EarnedValue - EarnedBefore - (ActualCost - ActualBefore);
        var schedule = EarnedValue - EarnedBefore - (PlannedValue - PlannedBefore);
        CostGained = Math.Max(0, cost);
        CostLost = Math.Min(0, cost);
        ScheduleGained = Math.Max(0, schedule);
        ScheduleLost = Math.Min(0, schedule);
    }
}
