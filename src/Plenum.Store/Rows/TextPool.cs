using System.Text;

namespace Plenum.Store.Rows;

/// <summary>
/// Gives equal texts the same string where they come again soon: suppliers, units, codes that many rows name. It
/// remembers the last text of each of its places and forgets the rest, so that it never grows; a column whose texts
/// hardly repeat stops looking.
/// </summary>
internal sealed class TextPool
{
    private const int Places = 4_096;
    private const int Trial = 8_192;
    private readonly string?[] known = new string?[Places];
    private readonly char[] buffer = new char[256];
    private int asked;
    private int found;
    private bool stopped;

    public string Of(ReadOnlySpan<byte> utf8)
    {
        if (stopped || utf8.Length > buffer.Length)
        {
            return Encoding.UTF8.GetString(utf8);
        }

        var length = Encoding.UTF8.GetChars(utf8, buffer);
        var text = buffer.AsSpan(0, length);
        ref var place = ref PlaceOf(text);
        if (place is not null && text.SequenceEqual(place))
        {
            found++;
            return place;
        }

        return place = text.ToString();
    }

    public string Of(string text)
    {
        ref var place = ref PlaceOf(text);
        return place = place == text ? place : text;
    }

    private ref string? PlaceOf(ReadOnlySpan<char> text)
    {
        if (++asked == Trial)
        {
            stopped = found * 4 < asked;
            asked = 0;
            found = 0;
        }

        return ref known[string.GetHashCode(text, StringComparison.Ordinal) & (Places - 1)];
    }
}
