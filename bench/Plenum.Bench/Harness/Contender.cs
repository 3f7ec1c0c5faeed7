namespace Plenum.Bench.Harness;

/// <summary>What a contender stands for.</summary>
internal enum Role
{
    /// <summary>The least that must be done to the same bytes: a plain copy or scan of them.</summary>
    Floor,

    /// <summary>The same work as a bare loop over plain memory; the fastest of these is the limit.</summary>
    Limit,

    /// <summary>Plenum.</summary>
    Plenum,

    /// <summary>A general-purpose tool.</summary>
    Tool,
}

/// <summary>One way to do the work of a benchmark.</summary>
/// <param name="Name">What it is called in the table.</param>
/// <param name="Role">What it stands for.</param>
/// <param name="Run">The work: everything inside the clock.</param>
internal sealed record Contender(string Name, Role Role, Action Run)
{
    /// <summary>The answer of the last run, in a form that can be compared; null where there is none.</summary>
    public Func<string>? Answer { get; init; }

    /// <summary>Done before each run, outside the clock.</summary>
    public Action? Before { get; init; }

    /// <summary>Done after each run and its answer, outside the clock.</summary>
    public Action? After { get; init; }

    /// <summary>It does one part in so many of the work; its ratios are multiplied by this.</summary>
    public int PartOf { get; init; } = 1;

    /// <summary>The answer is that of the part alone, and is compared with those of the same part.</summary>
    public string AnswerGroup => PartOf == 1 ? "" : $"1/{PartOf}";
}
