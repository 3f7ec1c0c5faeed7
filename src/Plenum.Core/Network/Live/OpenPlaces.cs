using System.Numerics;

namespace Plenum.Core.Network.Live;

/// <summary>
/// A set of whole numbers from 0 to a count, which gives its members in order while others are added: four levels of
/// bits, of which each marks the words of the one below that are not empty. All is done in constant time below 16
/// million.
/// </summary>
internal sealed class OpenPlaces
{
    private const int Levels = 4;
    private readonly ulong[][] levels = new ulong[Levels][];

    public OpenPlaces(int count)
    {
        for (var level = 0; level < Levels; level++)
        {
            count = (count + 63) >> 6;
            levels[level] = new ulong[Math.Max(1, count)];
        }
    }

    public void Add(int place)
    {
        foreach (var words in levels)
        {
            ref var word = ref words[place >> 6];
            var isEmpty = word == 0;
            word |= 1UL << (place & 63);
            if (!isEmpty)
            {
                return;
            }

            place >>= 6;
        }
    }

    public bool Contains(int place) => (levels[0][place >> 6] >> (place & 63) & 1) != 0;

    /// <summary>Takes the least member out; −1 if there is none.</summary>
    public int TakeFirst()
    {
        var place = 0;
        for (var level = Levels - 1; level >= 0; level--)
        {
            var word = levels[level][place];
            if (word == 0)
            {
                return -1;
            }

            place = (place << 6) | BitOperations.TrailingZeroCount(word);
        }

        Remove(place);
        return place;
    }

    /// <summary>Takes the greatest member out; −1 if there is none.</summary>
    public int TakeLast()
    {
        var place = 0;
        for (var level = Levels - 1; level >= 0; level--)
        {
            var word = levels[level][place];
            if (word == 0)
            {
                return -1;
            }

            place = (place << 6) | BitOperations.Log2(word);
        }

        Remove(place);
        return place;
    }

    public void Clear()
    {
        foreach (var words in levels)
        {
            Array.Clear(words);
        }
    }

    private void Remove(int place)
    {
        foreach (var words in levels)
        {
            ref var word = ref words[place >> 6];
            word &= ~(1UL << (place & 63));
            if (word != 0)
            {
                return;
            }

            place >>= 6;
        }
    }
}
