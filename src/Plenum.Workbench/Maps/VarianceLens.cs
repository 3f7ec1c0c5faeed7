using System.Globalization;
using Plenum.Core;
using Plenum.Core.Accounts;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lenses of the accounts: a variance as a share of its base, in five steps. CV of EV, SV of PV, VAC of BAC. Limits
/// are settings of the project (<c>variance_steps</c>). Every element has the value of its own sums, the same as in the
/// accounts by element; a limit itself belongs to the milder step. Where the base is zero and the variance is not, the
/// sign alone decides. Source: own definition; the limits are common practice.
/// </summary>
internal static class VarianceLens
{
    private const int StepCount = 5;
    private const char NoBreak = '\u00A0';

    /// <summary>CV as a share of EV.</summary>
    public static readonly Variance Cost = new(
        "Cost variance",
        "earned value",
        sums => Performance.CostVariance(sums),
        sums => sums.EarnedValue,
        [
            new LensClass("nothing_earned", "cost, nothing earned yet", "unf3"),
            new LensClass("not_started", "not started", "none"),
        ],
        sums =>
            sums.EarnedValue != 0 ? null
            : sums.ActualCost != 0 ? 0
            : 1
    );

    /// <summary>SV as a share of PV.</summary>
    public static readonly Variance Schedule = new(
        "Schedule variance",
        "planned value",
        sums => Performance.ScheduleVariance(sums),
        sums => sums.PlannedValue,
        [new LensClass("not_planned", "nothing planned yet", "none")],
        sums => sums.PlannedValue == 0 && sums.EarnedValue == 0 ? 0 : null
    );

    /// <summary>VAC as a share of BAC.</summary>
    public static readonly Variance Completion = new(
        "Variance at completion",
        "the budget",
        sums => Performance.VarianceAtCompletion(sums),
        sums => sums.BudgetAtCompletion,
        [new LensClass("not_started", "not started", "none")],
        sums =>
            sums.EarnedValue == 0
            && sums.ActualCost == 0
            && Performance.VarianceAtCompletion(sums) == 0
                ? 0
                : null
    );

    /// <summary>Words and legend, which need no sums.</summary>
    public static LensHead HeadOf(Project project, int period, Variance measure) =>
        new(
            new LensText(
                "Accounts",
                $"{measure.Name} as a share of {measure.BaseName}",
                period < 0 ? null : project.Periods.End(period)
            ),
            new LensLegend(
                measure.Name,
                [
                    .. Steps(
                        project.Settings.VarianceStep.BasisPoints,
                        project.Settings.FarVarianceStep.BasisPoints
                    ),
                    .. measure.Specials,
                ]
            )
        );

    public static Lens Of(Project project, int period, Variance measure)
    {
        var limits = (
            Near: project.Settings.VarianceStep.BasisPoints,
            Far: project.Settings.FarVarianceStep.BasisPoints
        );
        var variance = new long[project.Tree.Count];
        var ofBase = new long[variance.Length];
        var classOf = new byte[variance.Length];
        var cut = project.CutsUnder(-1).ByElement(null);
        var sums = CutMeasures.At(project.TimePhased, cut, period, false).Rows;
        for (var row = 0; row < classOf.Length; row++)
        {
            variance[row] = measure.Of(sums[row]);
            ofBase[row] = measure.Base(sums[row]);
            classOf[row] = (byte)(
                measure.SpecialOf(sums[row]) is { } special
                    ? StepCount + special
                    : StepOf(variance[row], ofBase[row], limits)
            );
        }

        var money = new MoneyText(project.Settings.Currency);
        return new Lens(
            project,
            HeadOf(project, period, measure),
            classOf,
            row => Figures(money, variance[row], ofBase[row], measure.BaseName)
        );
    }

    /// <summary>Step of a variance, 0 for far better to 4 for far worse. The base is not negative.</summary>
    private static int StepOf(long variance, long ofBase, (int Near, int Far) limits)
    {
        var size = Int128.Abs(variance) * Fraction.Whole;
        var step =
            size <= (Int128)ofBase * limits.Near ? 0
            : size <= (Int128)ofBase * limits.Far ? 1
            : 2;
        return 2 - (Math.Sign(variance) * step);
    }

    private static LensClass[] Steps(int near, int far)
    {
        var nearText = Percent(near);
        var farText = Percent(far);
        return
        [
            new("far_better", $"better than +{farText}{NoBreak}%", "fav4"),
            new("better", $"+{nearText} to +{farText}{NoBreak}%", "fav2"),
            new("within", $"within ±{nearText}{NoBreak}%", "neu"),
            new("worse", $"−{nearText} to −{farText}{NoBreak}%", "unf1"),
            new("far_worse", $"worse than −{farText}{NoBreak}%", "unf2"),
        ];
    }

    private static string Percent(int basisPoints) =>
        (basisPoints / 100m).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Figures(MoneyText money, long variance, long ofBase, string baseName)
    {
        var plus = variance > 0 ? "+" : "";
        var amount = plus + money.Of(variance);
        return ofBase > 0
            ? $"{plus}{MoneyText.Percent(variance, ofBase)} of {baseName}, {amount}"
            : amount;
    }

    /// <summary>A variance as the lens shows it.</summary>
    /// <param name="Name">What it is called.</param>
    /// <param name="BaseName">What it is a share of.</param>
    /// <param name="Of">The variance of a row, in minor units; negative is unfavourable.</param>
    /// <param name="Base">What it is a share of, in minor units, not negative.</param>
    /// <param name="Specials">Classes beside the five steps.</param>
    /// <param name="SpecialOf">Which of them a row has; null for none.</param>
    internal sealed record Variance(
        string Name,
        string BaseName,
        Func<MeasureSums, long> Of,
        Func<MeasureSums, long> Base,
        LensClass[] Specials,
        Func<MeasureSums, int?> SpecialOf
    );
}
