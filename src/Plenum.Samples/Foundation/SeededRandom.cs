namespace Plenum.Samples.Foundation;

/// <summary>
/// A small random number generator whose sequence depends on its seed alone, never on the runtime or the machine:
/// xoshiro256** (D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", 2021), its state filled
/// by SplitMix64 (G. Steele, D. Lea and C. Flood, 2014). Not for secrets.
/// </summary>
internal sealed class SeededRandom
{
    private ulong _s0;
    private ulong _s1;
    private ulong _s2;
    private ulong _s3;

    public SeededRandom(ulong seed) => Restart(seed);

    /// <summary>
    /// A sequence of its own for one purpose, so that a change in one part of the data leaves the others alone.
    /// </summary>
    public SeededRandom(ulong seed, string purpose)
        : this(Mix(seed ^ Hash(purpose))) { }

    public void Restart(ulong seed)
    {
        _s0 = Mix(unchecked(seed + 0x9E3779B97F4A7C15));
        _s1 = Mix(unchecked(seed + 0x3C6EF372FE94F82A));
        _s2 = Mix(unchecked(seed + 0xDAA66D2C7DDF743F));
        _s3 = Mix(unchecked(seed + 0x78DDE6E5FD29F054));
    }

    /// <summary>The finishing step of SplitMix64: every bit of the result depends on every bit of the value.</summary>
    public static ulong Mix(ulong value)
    {
        unchecked
        {
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
            return value ^ (value >> 31);
        }
    }

    public ulong Next()
    {
        unchecked
        {
            var result = ulong.RotateLeft(_s1 * 5, 7) * 9;
            var t = _s1 << 17;
            _s2 ^= _s0;
            _s3 ^= _s1;
            _s1 ^= _s2;
            _s0 ^= _s3;
            _s2 ^= t;
            _s3 = ulong.RotateLeft(_s3, 45);
            return result;
        }
    }

    /// <summary>A whole number from 0 to <paramref name="bound"/> - 1; the bound is 1 or more.</summary>
    public int Below(int bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, 1);
        return (int)Math.BigMul(Next(), (ulong)bound, out _);
    }

    /// <summary>A whole number between the two, both included.</summary>
    public int Between(int low, int high) => low + Below(high - low + 1);

    /// <summary>A number from 0 to just below 1, in steps of 2^-53.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number between the two.</summary>
    public double Between(double low, double high) => low + ((high - low) * Unit());

    /// <summary>True in <paramref name="percent"/> of 100 cases.</summary>
    public bool Chance(int percent) => Below(100) < percent;

    public T Pick<T>(IReadOnlyList<T> choices) => choices[Below(choices.Count)];

    /// <summary>FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo), 64 bits, over the text's UTF-16 code units.</summary>
    private static ulong Hash(string text)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var c in text)
        {
            hash = unchecked((hash ^ c) * 0x100000001B3);
        }
        return hash;
    }
}
