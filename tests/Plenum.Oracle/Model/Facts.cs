using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>The five cost elements in their order.</summary>
public static class CostElements
{
    public const string Other = "other";

    public static IReadOnlyList<string> All { get; } =
    ["labour", "material", "equipment", "subcontract", Other];
}

/// <summary>A reporting period; <paramref name="Number"/> counts from 1, <paramref name="Begin"/> is missing for a first one of a project without start.</summary>
public sealed record Period(string Code, int Number, DateOnly? Begin, DateOnly End);

/// <summary>A WBS element as given, with its kind filled in; the list of elements is depth first.</summary>
public sealed record Element(
    string Code,
    string Parent,
    int Level,
    string Name,
    string Kind,
    string Split,
    string Unit,
    Ratio? Quantity,
    BigInteger? Allotted
)
{
    public bool IsPackage => Kind is "work_package" or "planning_package";
}

/// <summary>A package: budget per cost element in minor units, hours in hundredths.</summary>
public sealed record Package(
    string Code,
    string NamedAccount,
    string Technique,
    string Base,
    string Spread,
    DateOnly? Start,
    DateOnly? Finish,
    IReadOnlyDictionary<string, BigInteger> Budget,
    BigInteger Hours
)
{
    public BigInteger TotalBudget => Budget.Values.Aggregate(BigInteger.Zero, BigInteger.Add);
}

public sealed record Account(string Code, string Name, string Element, string Unit);

/// <summary>A node of a tree of units or of groups; the lists are depth first.</summary>
public sealed record Node(string Code, string Name, string Parent);

public sealed record PeriodAmount(
    string Package,
    Period Period,
    string CostElement,
    BigInteger Amount
);

public sealed record Milestone(string Package, string Code, Ratio Weight, DateOnly? Planned);

public sealed record Item(string Package, string Code, Ratio? Quantity, Ratio Hours, string Rule);

public sealed record CreditStep(string Rule, string Code, Ratio Percent);

/// <summary>A row of a status table: whose it is, its period, and its fields as text (empty: not given).</summary>
public sealed record Report(
    string Package,
    string Part,
    string Step,
    Period Period,
    Tables.TextRow Fields
);

/// <summary>A ledger row; the charge is a package or an account; the amount is in the project's minor units.</summary>
public sealed record Booking(
    string Charge,
    Period Period,
    string CostElement,
    BigInteger Amount,
    bool Accrual
);

public sealed record Commitment(
    string Package,
    string CostElement,
    BigInteger Amount,
    DateOnly? Date
);

/// <summary>What the tables say, read once and not yet computed with.</summary>
public sealed record Facts(
    int CurrencyDigits,
    DateOnly? Start,
    DateOnly? StatusDate,
    bool AccrualsReversed,
    Calendar Calendar,
    IReadOnlyList<Period> Periods,
    IReadOnlyList<Element> Elements,
    IReadOnlyList<Package> Packages,
    IReadOnlyList<Account> Accounts,
    IReadOnlyList<Node> Units,
    IReadOnlyDictionary<string, IReadOnlyList<Node>> Groupings,
    IReadOnlyDictionary<(string Grouping, string Package), string> GroupOf,
    IReadOnlyList<PeriodAmount> PeriodAmounts,
    IReadOnlyList<Milestone> Milestones,
    IReadOnlyList<Item> Items,
    IReadOnlyList<CreditStep> CreditSteps,
    IReadOnlyList<Report> Status,
    IReadOnlyList<Report> MilestoneStatus,
    IReadOnlyList<Report> ItemSteps,
    IReadOnlyList<Booking> Bookings,
    IReadOnlyList<Commitment> Commitments,
    BigInteger Undistributed,
    int? LastPeriodReported
)
{
    public Element Element(string code) => Elements.Single(element => element.Code == code);

    public Package Package(string code) => Packages.Single(package => package.Code == code);

    /// <summary>The element itself, its parent, and so on up to the root.</summary>
    public IReadOnlyList<Element> SelfAndAncestors(string code)
    {
        var chain = new List<Element>();
        for (var next = code; next != ""; next = chain[^1].Parent)
        {
            chain.Add(Element(next));
        }

        return chain;
    }

    public bool LiesWithin(string element, string top) =>
        SelfAndAncestors(element).Any(ancestor => ancestor.Code == top);
}
