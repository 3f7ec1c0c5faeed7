using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>Order of codes: runs of digits compare as numbers, everything else by character.</summary>
public sealed class NaturalOrder : Comparer<string>
{
    public static NaturalOrder Instance { get; } = new();

    public override int Compare(string? x, string? y)
    {
        var a = Runs(x ?? "");
        var b = Runs(y ?? "");
        for (var i = 0; i < a.Count && i < b.Count; i++)
        {
            var bothNumbers = char.IsAsciiDigit(a[i][0]) && char.IsAsciiDigit(b[i][0]);
            var order = bothNumbers
                ? Number(a[i]).CompareTo(Number(b[i]))
                : string.CompareOrdinal(a[i], b[i]);
            if (order != 0)
            {
                return order;
            }
        }

        return a.Count != b.Count ? a.Count.CompareTo(b.Count) : string.CompareOrdinal(x, y);
    }

    private static BigInteger Number(string digits) =>
        BigInteger.Parse(digits, System.Globalization.CultureInfo.InvariantCulture);

    private static List<string> Runs(string text)
    {
        var runs = new List<string>();
        foreach (var character in text)
        {
            if (runs.Count > 0 && char.IsAsciiDigit(runs[^1][0]) == char.IsAsciiDigit(character))
            {
                runs[^1] += character;
            }
            else
            {
                runs.Add(character.ToString());
            }
        }

        return runs;
    }
}
