using System.Globalization;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>
/// Earned value techniques as numbers: 0 to 100 is a start/finish technique that earns so many per cent at the start
/// and the rest at the finish (0 is 0/100, 50 is 50/50); the others stand above.
/// </summary>
public sealed class TechniqueCodec : Codec
{
    public const int Milestones = 101;
    public const int Percent = 102;
    public const int Units = 103;
    public const int Items = 104;
    public const int LevelOfEffort = 105;
    public const int Apportioned = 106;

    public static readonly TechniqueCodec Instance = new();

    private static readonly string[] Words =
    [
        "milestones",
        "percent",
        "units",
        "items",
        "loe",
        "apportioned",
    ];

    public override string Expected =>
        "0/100, 50/50, any a/b that adds to 100, milestones, percent, units, items, loe or apportioned";

    /// <summary>True for the techniques that earn a part at the start and the rest at the finish.</summary>
    public static bool IsStartFinish(int technique) => technique is >= 0 and <= 100;

    public override bool TryParse(ReadOnlySpan<char> text, out int value)
    {
        for (var word = 0; word < Words.Length; word++)
        {
            if (text.Equals(Words[word], StringComparison.OrdinalIgnoreCase))
            {
                value = Milestones + word;
                return true;
            }
        }

        var slash = text.IndexOf('/');
        value = 0;
        return slash > 0
            && int.TryParse(
                text[..slash],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out value
            )
            && int.TryParse(
                text[(slash + 1)..],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var finish
            )
            && value <= 100
            && finish == 100 - value;
    }

    public override string Format(int value) =>
        IsStartFinish(value)
            ? string.Create(CultureInfo.InvariantCulture, $"{value}/{100 - value}")
            : Words[value - Milestones];
}
