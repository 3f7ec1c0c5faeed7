using Plenum.Core.Baseline;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Status;

/// <summary>
/// Items with rules of credit: the earned share is the sum of item hours × steps done over the sum of item hours. A
/// step counts with its quantity done over the item's quantity, whole where no quantity is given.
/// </summary>
internal sealed class ItemProgress
{
    private readonly Table items;
    private readonly Table steps;
    private readonly RowGroups itemsOf;
    private readonly RowGroups stepsOf;
    private readonly int[] periodOfRow;
    private readonly Dictionary<(string Rule, string Step), int> percentOfStep;
    private readonly Dictionary<string, List<string>> stepsOfRule;

    public ItemProgress(PackageBaseline baseline, StatusSources sources)
    {
        items = sources.Items;
        steps = sources.ItemSteps;
        periodOfRow = PackageStatus.PeriodsOf(steps, ItemStepTable.Period, sources.Periods);
        itemsOf = RowGroups.By(baseline.OwnersOf(items, ItemTable.Package), baseline.Count);
        stepsOf = RowGroups.By(
            baseline.OwnersOf(steps, ItemStepTable.Package),
            baseline.Count,
            periodOfRow
        );
        percentOfStep = [];
        stepsOfRule = new(StringComparer.Ordinal);
        var credit = sources.CreditSteps;
        for (var row = 0; row < credit.Count; row++)
        {
            percentOfStep[
                (credit.Texts(CreditStepTable.Rule)[row]!, credit.Texts(CreditStepTable.Step)[row]!)
            ] = credit.Ints(CreditStepTable.Percent)[row];
        }

        var order = credit.Ints(CreditStepTable.Order).ToArray();
        foreach (var row in Enumerable.Range(0, credit.Count).OrderBy(row => order[row]))
        {
            var rule = credit.Texts(CreditStepTable.Rule)[row]!;
            if (!stepsOfRule.TryGetValue(rule, out var ordered))
            {
                stepsOfRule[rule] = ordered = [];
            }

            ordered.Add(credit.Texts(CreditStepTable.Step)[row]!);
        }
    }

    public int[] PeriodsOf(int package) =>
        MilestoneProgress.PeriodsOf(stepsOf[package], periodOfRow);

    public Share ShareAt(int package, int period)
    {
        var done = StepsDone(package, period);
        var earned = ExactFraction.Zero;
        long allHours = 0;
        foreach (var row in itemsOf[package])
        {
            var hours = items.Longs(ItemTable.Hours)[row];
            if (!Cell.IsGiven(hours) || hours == 0)
            {
                continue;
            }

            allHours += hours;
            var item = items.Texts(ItemTable.Item)[row]!;
            if (
                items.Texts(ItemTable.Rule)[row] is { } rule
                && done.TryGetValue(item, out var itemSteps)
            )
            {
                var share = ItemShare(rule, itemSteps, items.Decimals(ItemTable.Quantity)[row]);
                earned += share * new ExactFraction(hours, 1);
            }
        }

        return allHours == 0 ? Share.None : Share.From(earned / new ExactFraction(allHours, 1));
    }

    /// <summary>
    /// The share that the next step earns: of the first item that is not through, the first step that is not done; of a
    /// step that is reported by quantity, one unit of it. 0 when all is done; the whole where nothing can be counted.
    /// </summary>
    public double NextWeight(int package, int period)
    {
        var done = StepsDone(package, period);
        foreach (var (row, step, weight) in Steps(package))
        {
            var item = items.Texts(ItemTable.Item)[row]!;
            var quantity = items.Decimals(ItemTable.Quantity)[row];
            if (
                !done.TryGetValue(item, out var itemSteps)
                || !itemSteps.TryGetValue(step, out var reported)
                || reported == Cell.WithdrawnDecimal
            )
            {
                return weight;
            }

            if (reported != Cell.NoDecimal && !(Cell.IsGiven(quantity) && reported >= quantity))
            {
                return quantity > 1 ? weight / (double)quantity : weight;
            }
        }

        return HasSteps(package) ? 0 : 1;
    }

    /// <summary>The same by plan: the step at which the items, done one after the other, reach a share.</summary>
    public double PlannedNextWeight(int package, double plannedShare)
    {
        var sum = 0.0;
        var last = 1.0;
        foreach (var (_, _, weight) in Steps(package))
        {
            sum += weight;
            last = weight;
            if (sum > plannedShare)
            {
                return weight;
            }
        }

        return last;
    }

    private bool HasSteps(int package) => Steps(package).Any();

    /// <summary>All steps of all items that count, in order, with the share that each earns.</summary>
    private IEnumerable<(int Item, string Step, double Weight)> Steps(int package)
    {
        var rows = itemsOf[package].ToArray();
        var allHours = 0L;
        foreach (var row in rows)
        {
            var hours = items.Longs(ItemTable.Hours)[row];
            allHours += Cell.IsGiven(hours) ? hours : 0;
        }

        foreach (var row in rows)
        {
            var hours = items.Longs(ItemTable.Hours)[row];
            var rule = items.Texts(ItemTable.Rule)[row];
            if (!Cell.IsGiven(hours) || hours == 0 || rule is null)
            {
                continue;
            }

            foreach (var step in stepsOfRule.GetValueOrDefault(rule) ?? [])
            {
                var percent = percentOfStep[(rule, step)];
                if (percent > 0)
                {
                    yield return (row, step, (double)hours / allHours * percent / Fraction.Whole);
                }
            }
        }
    }

    private ExactFraction ItemShare(
        string rule,
        Dictionary<string, decimal> itemSteps,
        decimal quantity
    )
    {
        var share = ExactFraction.Zero;
        foreach (var (step, stepQuantity) in itemSteps)
        {
            if (
                stepQuantity == Cell.WithdrawnDecimal
                || !percentOfStep.TryGetValue((rule, step), out var percent)
            )
            {
                continue;
            }

            var part =
                stepQuantity == Cell.NoDecimal ? ExactFraction.One : PartOf(stepQuantity, quantity);
            share += part * new ExactFraction(percent, Fraction.Whole);
        }

        return share;
    }

    private static ExactFraction PartOf(decimal done, decimal quantity)
    {
        if (!Cell.IsGiven(quantity) || quantity <= 0)
        {
            return ExactFraction.Zero;
        }

        return done >= quantity
            ? ExactFraction.One
            : ExactFraction.Of(done) / ExactFraction.Of(quantity);
    }

    /// <summary>For each item the quantity that its steps' last rows give; not given means the whole step.</summary>
    private Dictionary<string, Dictionary<string, decimal>> StepsDone(int package, int period)
    {
        Dictionary<string, Dictionary<string, decimal>> done = new(StringComparer.Ordinal);
        var names = steps.Texts(ItemStepTable.Item);
        var codes = steps.Texts(ItemStepTable.Step);
        var quantities = steps.Decimals(ItemStepTable.Quantity);
        foreach (var row in stepsOf[package])
        {
            if (periodOfRow[row] > period)
            {
                break;
            }

            if (!done.TryGetValue(names[row]!, out var itemSteps))
            {
                done[names[row]!] = itemSteps = new Dictionary<string, decimal>(
                    StringComparer.Ordinal
                );
            }

            itemSteps[codes[row]!] = quantities[row];
        }

        return done;
    }
}
