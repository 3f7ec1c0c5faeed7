namespace Plenum.Bench.Data;

/// <summary>Numbers drawn from a seed, the same on any machine (SplitMix64: Steele, Lea and Flood 2014).</summary>
internal sealed class Draw(ulong seed)
{
    private ulong state = seed;

    /// <summary>A number from 0 up to but not including <paramref name="below"/>.</summary>
    public int Below(int below) => (int)(((Next() >> 32) * (ulong)below) >> 32);

    /// <summary>A number from <paramref name="least"/> to <paramref name="most"/>, both included.</summary>
    public int Between(int least, int most) => least + Below(most - least + 1);

    private ulong Next()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var mixed = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }
}
