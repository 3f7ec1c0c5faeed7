namespace Plenum.Samples.Demo;

/// <summary>A system of the plant: level 2 of the breakdown.</summary>
internal sealed class PlantSystem
{
    public required string Code { get; init; }
    public required string Name { get; init; }
    public required string Split { get; init; }
    public required string Description { get; init; }
    public List<Subsystem> Subsystems { get; } = [];
}

/// <summary>A part of a system: level 3, on which the control accounts stand.</summary>
internal sealed class Subsystem
{
    public required string Code { get; init; }
    public required string Name { get; init; }
    public required string Split { get; init; }
    public required string Description { get; init; }
    public required string DoneWhen { get; init; }

    /// <summary>Null where the subsystem is not broken down.</summary>
    public required DateOnly? DesignStarts { get; init; }
    public required DateOnly? SiteOpens { get; init; }
    public List<Account> Accounts { get; } = [];
    public List<Component> Components { get; } = [];

    /// <summary>Components that were named, and given an amount, but not broken down.</summary>
    public List<(string Code, string Name, long Allotted)> Open { get; } = [];
}

/// <summary>
/// A control account with the figures at the status date that the demo is steered to, in minor units. One without
/// manager stands for packages that no account holds.
/// </summary>
internal sealed class Account
{
    public required Subsystem Subsystem { get; init; }
    public required string Unit { get; init; }
    public required string Manager { get; init; }
    public required long Budget { get; init; }
    public long? Planned { get; set; }
    public long? Earned { get; set; }
    public long? CostVariance { get; set; }

    /// <summary>What packages gain, and others lose, inside the account; null where nothing is to be hidden.</summary>
    public long? Offset { get; init; }

    public bool Exists => Manager.Length > 0;
    public string Code => $"{Subsystem.Code}-{Unit}";
    public List<Package> Packages { get; } = [];

    /// <summary>Cost charged to the account itself up to the status date, in minor units.</summary>
    public long Charged { get; set; }
}

/// <summary>A part of a subsystem: level 4, split by phase into packages.</summary>
internal sealed class Component
{
    public required string Code { get; init; }
    public required string Name { get; init; }
    public required Account Account { get; init; }
    public required PartType Type { get; init; }
    public required int Weight { get; init; }

    /// <summary>Null where nobody is in charge yet.</summary>
    public string? Person { get; set; }
    public List<Package> Packages { get; } = [];

    /// <summary>Activities of the work set that are neither planned nor ruled out.</summary>
    public HashSet<string> Missing { get; } = new(StringComparer.Ordinal);

    public Package? FirstOf(string activity) =>
        Packages.Find(package => package.Activity == activity);

    public Package? LastOf(string activity) =>
        Packages.FindLast(package => package.Activity == activity);
}

/// <summary>A work package or planning package: level 5.</summary>
internal sealed class Package
{
    public required Component Component { get; init; }

    /// <summary>The step that it carries out; for supervision and inspection a step made for them.</summary>
    public required WorkStep Step { get; init; }

    /// <summary>The work set's activity; empty for supervision and inspection, which belong to no work set.</summary>
    public required string Activity { get; init; }
    public required string Name { get; set; }

    /// <summary>Which lot of how many (1 of 1 for most).</summary>
    public required int Lot { get; init; }
    public required int Lots { get; init; }
    public string Code { get; set; } = "";

    /// <summary>Its place in depth-first order.</summary>
    public int Index { get; set; }
    public bool IsPlanning { get; set; }
    public string? Person { get; set; }

    public string Technique { get; set; } = "";
    public string Spread { get; set; } = "even";
    public Package? Base { get; set; }
    public int? Quantity { get; set; }
    public List<Milestone> Milestones { get; } = [];
    public List<BulkItem> Items { get; } = [];
    public string CreditRule { get; set; } = "";

    /// <summary>Baseline dates as working days of the project's calendar, both included.</summary>
    public int Start { get; set; }
    public int Finish { get; set; }
    public int Days => Finish - Start + 1;

    /// <summary>A day before which the plan does not let it start; null where links alone date it.</summary>
    public int? NotBefore { get; set; }
    public List<Link> Into { get; } = [];
    public List<PlannedActivity> Activities { get; } = [];
    public PlannedMilestone? Milestone { get; set; }

    public List<BudgetLine> Lines { get; } = [];
    public long Budget { get; set; }

    public Progress Progress { get; } = new();

    /// <summary>Up to the status date, minor units.</summary>
    public long ActualCost { get; set; }

    public bool IsFollowing => Technique is "loe" or "apportioned";
}

/// <summary>A step of a package that is measured by weighted milestones.</summary>
/// <param name="Name">What is reached.</param>
/// <param name="Weight">Its share in per cent.</param>
/// <param name="Planned">The working day on which it is planned.</param>
internal sealed record Milestone(string Name, int Weight, int Planned);

/// <summary>A piece of bulk work that earns by the steps of a rule of credit.</summary>
internal sealed record BulkItem(string Code, string Name, int Quantity, int Hours);

/// <summary>A link between packages; the lag counts working days.</summary>
internal sealed record Link(Package From, Package To, string Type, int Lag);

/// <summary>An activity of the network, dated like its package; days are working days of its own calendar.</summary>
internal sealed record PlannedActivity(
    string Code,
    string Name,
    int Start,
    int Finish,
    int Days,
    string Calendar
);

/// <summary>
/// A milestone of the network that closes its package. The required date is one of the contract: tested, it moves
/// nothing.
/// </summary>
internal sealed record PlannedMilestone(string Code, string Name, DateOnly? Required);

/// <summary>One cost element of a package's budget.</summary>
/// <param name="CostElement">Labour, material, equipment, subcontract or other.</param>
/// <param name="Amount">In hundredths of <paramref name="Currency"/>.</param>
/// <param name="Converted">In minor units of the project's currency.</param>
/// <param name="Hours">In hundredths; null for all but labour.</param>
/// <param name="Currency">Null for the project's own.</param>
internal sealed record BudgetLine(
    string CostElement,
    long Amount,
    long Converted,
    long? Hours,
    ForeignCurrency? Currency
);

/// <summary>A currency in which some orders are placed.</summary>
/// <param name="Code">After ISO 4217.</param>
/// <param name="Rate">Units of the project's currency for one unit of it.</param>
/// <param name="HasMinorUnits">False where it has no decimals.</param>
internal sealed record ForeignCurrency(string Code, decimal Rate, bool HasMinorUnits)
{
    /// <summary>
    /// The amount in this currency (hundredths) that comes nearest to one in the project's, and what it is worth
    /// there: converted once, rounded half away from zero.
    /// </summary>
    public (long Amount, long Converted) FromProject(long minorUnits)
    {
        var digits = HasMinorUnits ? 2 : 0;
        var amount = Math.Round(minorUnits / 100m / Rate, digits, MidpointRounding.AwayFromZero);
        var converted = Math.Round(amount * Rate * 100m, MidpointRounding.AwayFromZero);
        return ((long)(amount * 100m), (long)converted);
    }
}
