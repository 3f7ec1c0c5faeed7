namespace Plenum.Workbench.Maps;

public sealed record LookupHit(string Code, string Name, string What, string? Person);

public sealed record LookupQuestion
{
    public static readonly LookupQuestion Whole = new();
}

public sealed class Lookup(Plenum.Core.Project p)
{
    public Plenum.Core.Project P => p;

    public IReadOnlyList<LookupHit> Find(string t, int n) => [];
}
