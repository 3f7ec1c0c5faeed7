namespace Plenum.Oracle.Generator;

/// <summary>Random choices that depend on the seed alone, on every machine (a splitmix64 sequence).</summary>
public sealed class Dice(long seed)
{
    private ulong state = unchecked((ulong)seed);

    /// <summary>A whole number from <paramref name="low"/> to <paramref name="high"/>, both possible.</summary>
    public long Between(long low, long high) =>
        low + (long)(Next() % unchecked((ulong)(high - low) + 1));

    public int Between(int low, int high) => (int)Between((long)low, high);

    /// <summary>True so many times in a hundred.</summary>
    public bool Chance(int percent) => Between(1, 100) <= percent;

    public T Pick<T>(params IReadOnlyList<T> choices) => choices[Between(0, choices.Count - 1)];

    public DateOnly Day(DateOnly first, DateOnly last) =>
        last <= first ? first : first.AddDays(Between(0, last.DayNumber - first.DayNumber));

    /// <summary>The numbers from 0 to count - 1 in a random order.</summary>
    public IReadOnlyList<int> Shuffled(int count)
    {
        var order = Enumerable.Range(0, count).ToArray();
        for (var i = count - 1; i > 0; i--)
        {
            var other = Between(0, i);
            (order[i], order[other]) = (order[other], order[i]);
        }

        return order;
    }

    /// <summary>Whole parts, none negative, that add up to the amount.</summary>
    public IReadOnlyList<long> Parts(long amount, int count)
    {
        var cuts = Enumerable.Range(0, count - 1).Select(_ => Between(0, amount)).Order().ToList();
        long[] bounds = [0, .. cuts, amount];
        return [.. Enumerable.Range(0, count).Select(i => bounds[i + 1] - bounds[i])];
    }

    private ulong Next()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
