using System.Globalization;
using System.Numerics;
using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Generator;

/// <summary>An element while a project is being made up.</summary>
internal sealed class DraftElement
{
    public required string Code { get; init; }
    public required DraftElement? Parent { get; init; }
    public required int Level { get; init; }
    public List<DraftElement> Children { get; } = [];
    public string Kind { get; set; } = "";
    public string Unit { get; set; } = "";
    public string Quantity { get; set; } = "";
    public bool IsPackage => Kind is "work_package" or "planning_package";

    public IEnumerable<DraftElement> SelfAndAncestors()
    {
        for (var next = this; next is not null; next = next.Parent)
        {
            yield return next;
        }
    }
}

/// <summary>A package while a project is being made up; budget in the project's minor units.</summary>
internal sealed class DraftPackage
{
    public required DraftElement Element { get; init; }
    public string Code => Element.Code;
    public string Technique { get; set; } = "";
    public DateOnly? Start { get; set; }
    public DateOnly? Finish { get; set; }
    public Dictionary<string, BigInteger> Budget { get; } = new(StringComparer.Ordinal);
    public long TotalBudget => (long)Budget.Values.Aggregate(BigInteger.Zero, BigInteger.Add);
}

internal sealed record DraftPeriod(string Code, DateOnly Begin, DateOnly End);

/// <summary>What the parts of the generator share: the dice, the tables written so far and what they mean.</summary>
internal sealed class Draft(Dice dice)
{
    public Dice Dice { get; } = dice;
    public TextProject Text { get; } = new();
    public string Currency { get; set; } = "EUR";
    public int Digits => Model.Currency.Digits(Currency);
    public bool HasStart { get; set; }
    public Model.Calendar Calendar { get; set; } = Model.Calendar.MondayToFriday;
    public List<DraftPeriod> Periods { get; } = [];
    public DateOnly FirstDay => Periods[0].Begin;
    public DateOnly LastDay => Periods[^1].End;
    public List<DraftElement> Elements { get; } = [];
    public List<DraftPackage> Packages { get; } = [];
    public List<string> Units { get; } = [];
    public List<(string Code, DraftElement Element)> Accounts { get; } = [];

    /// <summary>The number of periods, from the first, in which something may be reported; possibly none.</summary>
    public int PeriodsReported { get; set; }

    public static string Iso(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A count of the smallest unit as a decimal, with its last zeros sometimes left away.</summary>
    public string Decimal(BigInteger count, int decimals)
    {
        var digits = BigInteger
            .Abs(count)
            .ToString(CultureInfo.InvariantCulture)
            .PadLeft(decimals + 1, '0');
        var text = decimals == 0 ? digits : digits[..^decimals] + "." + digits[^decimals..];
        if (decimals > 0 && Dice.Chance(40))
        {
            text = text.TrimEnd('0').TrimEnd('.');
        }

        return count.Sign < 0 ? "-" + text : text;
    }

    /// <summary>An amount of the project's currency, in minor units, as it stands in a table.</summary>
    public string Money(BigInteger minorUnits) => Decimal(minorUnits, Digits);

    /// <summary>
    /// Gives a row an amount: mostly in the project's currency, else in another one with a rate. The result is the
    /// amount in the project's minor units.
    /// </summary>
    public BigInteger SetAmount(TextRow row, BigInteger minorUnits)
    {
        if (!Dice.Chance(20))
        {
            row["amount"] = Money(minorUnits);
            row["currency"] = Dice.Chance(20) ? Currency : "";
            row["rate"] = "";
            return minorUnits;
        }

        var other = Dice.Pick("EUR", "USD", "JPY", "KWD", "NOK", "KRW", "BHD");
        row["amount"] = Decimal(minorUnits, Model.Currency.Digits(other));
        row["currency"] = other;
        row["rate"] =
            other == Currency
                ? ""
                : Dice.Pick("0.92", "1.0837", "0.0061", "150.25", "3.2573", "2", "0.5");
        return Model.Currency.Converted(row["amount"], other, row["rate"], Currency);
    }

    public string Hours(long most) => Decimal(Dice.Between(0, most * 100), 2);
}
