namespace Plenum.Bench.Harness;

/// <summary>A piece of work, the data for it, and the ways to do it. Data are made by the constructor of each.</summary>
internal abstract class Benchmark : IDisposable
{
    /// <summary>What is measured, in a line.</summary>
    public abstract string Question { get; }

    /// <summary>The data, how they were made, and what is inside the clock.</summary>
    public abstract string Data { get; }

    public abstract IReadOnlyList<Contender> Contenders { get; }

    /// <summary>What is told below the table, measured when it is asked for; nothing by default.</summary>
    public virtual IEnumerable<string> Below => [];

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) { }
}

/// <param name="Seed">From which all data are made.</param>
/// <param name="Divide">Sizes are divided by this; 1 for figures that are to be published.</param>
/// <param name="Limits">The loops in C++; null without a compiler.</param>
/// <param name="Folder">A folder of its own that is removed afterwards.</param>
internal sealed record Setting(ulong Seed, int Divide, Native.Limits? Limits, string Folder)
{
    public int Size(int full) => Math.Max(1, full / Divide);
}
