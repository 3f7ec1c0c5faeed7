using System.Globalization;

namespace Plenum.Core.Estimate;

/// <summary>
/// An estimate class, 1 (most defined) to 5. The class follows from how mature the deliverables are that define the
/// work, not from effort or method; where the published ranges of maturity overlap it is a judgement, so that it is
/// named and never computed. Source: AACE International 17R-97 and 18R-97 (process industries), from summaries.
/// </summary>
/// <param name="Number">1 to 5.</param>
/// <param name="Use">Typical use.</param>
/// <param name="MostBelow">Widest usual range below the estimate, in per cent.</param>
/// <param name="MostAbove">Widest usual range above it, in per cent.</param>
public sealed record EstimateClass(int Number, string Use, int MostBelow, int MostAbove)
{
    /// <summary>The classes from 1 to 5.</summary>
    public static readonly IReadOnlyList<EstimateClass> All =
    [
        new(1, "check, bid", 10, 15),
        new(2, "control, bid", 15, 20),
        new(3, "budget authorisation, control", 20, 30),
        new(4, "study, feasibility", 30, 50),
        new(5, "concept screening", 50, 100),
    ];

    /// <summary>The class that a cell names: its number, alone or after the word class; null for anything else.</summary>
    public static EstimateClass? Of(string? text)
    {
        var word = text?.Trim() ?? "";
        if (word.StartsWith("class", StringComparison.OrdinalIgnoreCase))
        {
            word = word["class".Length..].Trim();
        }

        return
            int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number is >= 1 and <= 5
            ? All[number - 1]
            : null;
    }
}
