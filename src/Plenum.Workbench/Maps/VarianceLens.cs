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
    private const char NoBreak = '\u00A0';

    /// <summary>CV as a share of EV.</summary>
    public static Lens OfCost(Project project, int period) =>
        Make(
            project,
            period,
            new Measure(
                "Cost variance",
                "earned value",
                sums => Performance.CostVariance(sums),
                sums => sums.EarnedValue,
                [
                    Special("nothing_earned", "cost, nothing earned yet", "unf3"),
                    Special("not_started", "not started", "none"),
                ],
                sums =>
                    sums.EarnedValue != 0 ? null
                    : sums.ActualCost != 0 ? 0
                    : 1
            )
        );

    /// <summary>SV as a share of PV.</summary>
    public static Lens OfSchedule(Project project, int period) =>
        Make(
            project,
            period,
            new Measure(
                "Schedule variance",
                "planned value",
                sums => Performance.ScheduleVariance(sums),
                sums => sums.PlannedValue,
                [Special("not_planned", "nothing planned yet", "none")],
                sums => sums.PlannedValue == 0 && sums.EarnedValue == 0 ? 0 : null
            )
        );

    /// <summary>VAC as a share of BAC.</summary>
    public static Lens AtCompletion(Project project, int period) =>
        Make(
            project,
            period,
            new Measure(
                "Variance at completion",
                "the budget",
                sums => Performance.VarianceAtCompletion(sums),
                sums => sums.BudgetAtCompletion,
                [Special("not_started", "not started", "none")],
                sums =>
                    sums.EarnedValue == 0
                    && sums.ActualCost == 0
                    && Performance.VarianceAtCompletion(sums) == 0
                        ? 0
                        : null
            )
        );

    private static Lens Make(Project project, int period, Measure measure)
    {
        var limits = (
            Near: project.Settings.VarianceStep.BasisPoints,
            Far: project.Settings.FarVarianceStep.BasisPoints
        );
        LensClass[] steps = Steps(limits.Near, limits.Far);
        var variance = new long[project.Tree.Count];
        var ofBase = new long[variance.Length];
        var classOf = new byte[variance.Length];
        var cut = project.CutsUnder(-1).ByElement(null);
        var sums = CutMeasures.At(project.TimePhased, cut, period, false).Rows;
        for (var row = 0; row < classOf.Length; row++)
        {
            variance[row] = measure.Variance(sums[row]);
            ofBase[row] = measure.Base(sums[row]);
            classOf[row] = (byte)(
                measure.SpecialOf(sums[row]) is { } special
                    ? steps.Length + special
                    : StepOf(variance[row], ofBase[row], limits)
            );
        }

        var money = new MoneyText(project.Settings.Currency);
        return new Lens(
            project,
            new LensText(
                "Accounts",
                $"{measure.Name} as a share of {measure.BaseName}",
                period < 0 ? null : project.Periods.End(period)
            ),
            new LensLegend(measure.Name, [.. steps, .. measure.Specials]),
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

    private static LensClass Special(string key, string word, string fill) => new(key, word, fill);

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

    /// <param name="Name">What it is called.</param>
    /// <param name="BaseName">What it is a share of.</param>
    /// <param name="Variance">The variance of a row, in minor units; negative is unfavourable.</param>
    /// <param name="Base">What it is a share of, in minor units, not negative.</param>
    /// <param name="Specials">Classes beside the five steps.</param>
    /// <param name="SpecialOf">Which of them a row has; null for none.</param>
    private sealed record Measure(
        string Name,
        string BaseName,
        Func<MeasureSums, long> Variance,
        Func<MeasureSums, long> Base,
        LensClass[] Specials,
        Func<MeasureSums, int?> SpecialOf
    );
}
