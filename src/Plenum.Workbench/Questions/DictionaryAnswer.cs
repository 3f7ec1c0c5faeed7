using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Questions;

/// <summary>The dictionary sheet of one element. Texts are null where nothing is written; money in major units.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Kind">A number of <see cref="ElementTable.Kinds"/>.</param>
/// <param name="Level">Its level, 1 for the root.</param>
public sealed record DictionaryAnswer(string Code, string Name, int Kind, int Level)
{
    public NamedCode? Parent { get; init; }

    public string? Description { get; init; }

    public string? Included { get; init; }

    public string? Excluded { get; init; }

    public string? Output { get; init; }

    /// <summary>When it is done.</summary>
    public string? Acceptance { get; init; }

    public string? Assumptions { get; init; }

    public decimal? Quantity { get; init; }

    public string? QuantityUnit { get; init; }

    public IReadOnlyList<string> Hazards { get; init; } = [];

    public NamedCode? PartType { get; init; }

    /// <summary>For a package: the activity of the part's work set that it carries out.</summary>
    public string? Activity { get; init; }

    public string? Split { get; init; }

    public int Parts { get; init; }

    /// <summary>The scope items that are traced to this element itself.</summary>
    public IReadOnlyList<TracedItem> Scope { get; init; } = [];

    public InheritedName? Person { get; init; }

    public InheritedName? Unit { get; init; }

    /// <summary>The control accounts in which its packages are.</summary>
    public IReadOnlyList<NamedCode> Accounts { get; init; } = [];

    /// <summary>Packages at or below it.</summary>
    public int Packages { get; init; }

    public int PackagesWithoutAccount { get; init; }

    /// <summary>Those for which nobody is in charge.</summary>
    public int PackagesWithoutPerson { get; init; }

    /// <summary>For a package: how it earns.</summary>
    public string? Technique { get; init; }

    /// <summary>For a package: its baseline start.</summary>
    public DateOnly? Start { get; init; }

    /// <summary>For a package: its baseline finish.</summary>
    public DateOnly? Finish { get; init; }

    /// <summary>Entries of the register on this element itself.</summary>
    public IReadOnlyList<RegisterLine> Register { get; init; } = [];

    public decimal? Allotted { get; init; }

    public decimal Budget { get; init; }

    /// <summary>Positive: belongs to no part; negative: its parts have more than it was given; null: nothing to compare.</summary>
    public decimal? Gap { get; init; }

    /// <summary>The gap as a share of what it was allotted, never negative.</summary>
    public decimal? GapShare { get; init; }

    public decimal Hours { get; init; }

    /// <summary>0 to 1; null while the project has no size.</summary>
    public decimal? ShareOfProject { get; init; }
}

public sealed record NamedCode(string Code, string Name);

/// <param name="Code">Code of the person or unit.</param>
/// <param name="Name">Name.</param>
/// <param name="From">Code of the element above that names it; null if the element does so itself.</param>
public sealed record InheritedName(string Code, string Name, string? From);

/// <param name="Item">Number of the scope item.</param>
/// <param name="Kind">What it states.</param>
/// <param name="Text">The wording.</param>
/// <param name="Phrase">The words that the element answers; null for the whole.</param>
public sealed record TracedItem(string Item, string Kind, string Text, string? Phrase);

/// <param name="Entry">Number.</param>
/// <param name="Kind">Opportunity, constraint, risk or interface.</param>
/// <param name="Text">The entry.</param>
/// <param name="Owner">Who follows it up.</param>
/// <param name="Likely">Likely effect in money, major units.</param>
/// <param name="Days">Likely effect in days.</param>
/// <param name="Giver">Interface: who gives.</param>
/// <param name="Receiver">Interface: who receives.</param>
/// <param name="NeedBy">Interface: when it is needed.</param>
/// <param name="Promised">Interface: when it is promised.</param>
public sealed record RegisterLine(
    string Entry,
    string Kind,
    string Text,
    string? Owner,
    decimal? Likely,
    decimal? Days,
    string? Giver,
    string? Receiver,
    DateOnly? NeedBy,
    DateOnly? Promised
);
