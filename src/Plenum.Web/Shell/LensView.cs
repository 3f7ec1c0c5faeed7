namespace Plenum.Web.Shell;

// placeholder until Maps stands
public sealed record LensClass(string Word, string Fill, string Pattern = "plain");

public sealed record LensLegend(
    string Name,
    IReadOnlyList<LensClass> Classes,
    bool Findings,
    bool Outlines
);

public sealed record LensChoice(string Word, string Name);

public sealed record LensView(
    string Title,
    string Says,
    LensLegend Legend,
    string Word,
    IReadOnlyList<LensChoice> Choices
)
{
    public static LensView For(Sheet sheet) =>
        new(
            "Accounts",
            "Cost variance as a share of earned value",
            new LensLegend("x", [], false, true),
            "cost",
            []
        );

    public string Address(string key, long revision, int period) =>
        $"/projects/{key}/lens/{Word}?revision={revision}&period={period}";
}

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
