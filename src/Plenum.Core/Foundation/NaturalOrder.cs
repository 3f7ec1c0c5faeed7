namespace Plenum.Core.Foundation;

/// <summary>
/// Orders codes as people read them: runs of digits compare as numbers, everything else by character, so that 1.2
/// comes before 1.10. Codes that differ only in leading zeros are ordered by their characters.
/// </summary>
public sealed class NaturalOrder : IComparer<string?>
{
    public static readonly NaturalOrder Codes = new();

    public int Compare(string? x, string? y)
    {
        if (x is null || y is null)
        {
            return x is null ? (y is null ? 0 : -1) : 1;
        }

        int i = 0,
            j = 0;
        while (i < x.Length && j < y.Length)
        {
            int order;
            if (char.IsAsciiDigit(x[i]) && char.IsAsciiDigit(y[j]))
            {
                order = CompareNumbers(NumberAt(x, ref i), NumberAt(y, ref j));
            }
            else
            {
                order = x[i++].CompareTo(y[j++]);
            }

            if (order != 0)
            {
                return order;
            }
        }

        var rest = (x.Length - i).CompareTo(y.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(x, y);
    }

    private static ReadOnlySpan<char> NumberAt(string code, ref int position)
    {
        var start = position;
        while (position < code.Length && char.IsAsciiDigit(code[position]))
        {
            position++;
        }

        return code.AsSpan(start, position - start).TrimStart('0');
    }

    private static int CompareNumbers(ReadOnlySpan<char> left, ReadOnlySpan<char> right)
    {
        var byLength = left.Length.CompareTo(right.Length);
        return byLength != 0 ? byLength : left.SequenceCompareTo(right);
    }
}
