using Plenum.Samples.Foundation;

namespace Plenum.Samples.Synthetic;

/// <summary>A package of a synthetic project; the same objects are filled again for each account.</summary>
internal sealed class SyntheticPackage
{
    public int Step { get; set; }
    public string Technique { get; set; } = "";
    public string Spread { get; set; } = "even";

    /// <summary>Baseline and actual dates as working days, both ends included; actual ones may be in the future.</summary>
    public int Start { get; set; }
    public int Finish { get; set; }
    public int ActualStart { get; set; }
    public int ActualFinish { get; set; }

    /// <summary>Minor units, of the main and of the second cost element.</summary>
    public long MainBudget { get; set; }
    public long OtherBudget { get; set; }

    /// <summary>What is spent for a unit of budget.</summary>
    public double CostFactor { get; set; }
    public int Quantity { get; set; }

    public long Budget => MainBudget + OtherBudget;
    public SyntheticStep Kind => SyntheticWords.Steps[Step];
    public int Days => Finish - Start + 1;
    public bool IsStarted => ActualStart <= SyntheticTime.StatusWorkDay;
    public bool IsFinished => ActualFinish <= SyntheticTime.StatusWorkDay;
    public bool IsFollowing => Step is SyntheticWords.Inspection or SyntheticWords.Supervision;

    public double PlannedShare(int day) =>
        day < Start ? 0
        : day >= Finish ? 1
        : Spreads.Share(Spread, (double)(day - Start + 1) / Days);

    /// <summary>The share of the work that is done at the end of a day.</summary>
    public double Done(int day) =>
        day < ActualStart ? 0
        : day >= ActualFinish ? 1
        : (double)(day - ActualStart + 1) / (ActualFinish - ActualStart + 1);

    /// <summary>The day on which so many per cent of the work are done.</summary>
    public int DayOf(int percent) =>
        percent >= 100
            ? ActualFinish
            : Math.Max(
                ActualStart,
                ActualStart + ((ActualFinish - ActualStart + 1) * percent / 100) - 1
            );

    public int UnitsDone(int day) =>
        day >= ActualFinish ? Quantity : Math.Min(Quantity - 1, (int)(Quantity * Done(day)));
}
