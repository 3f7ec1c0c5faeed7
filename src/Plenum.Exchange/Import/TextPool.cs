namespace Plenum.Exchange.Import;

/// <summary>
/// Gives the same string for the same text where it was seen lately, so that repeated words are kept once. A small
/// table in which a new text takes the place of an old one: never more than its slots are held.
/// </summary>
internal sealed class TextPool
{
    private const int Slots = 1 << 14;
    private const int LongestPooled = 64;

    private readonly string?[] seen = new string?[Slots];

    public string Get(ReadOnlySpan<char> text)
    {
        if (text.Length > LongestPooled)
        {
            return text.ToString();
        }

        ref var slot = ref seen[string.GetHashCode(text, StringComparison.Ordinal) & (Slots - 1)];
        if (slot is null || !text.SequenceEqual(slot))
        {
            slot = text.ToString();
        }

        return slot;
    }
}
