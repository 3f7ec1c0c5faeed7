using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>The answer to a <see cref="ScopeQuestion"/>. Money in major units, exact.</summary>
/// <param name="At">The day at which ages are counted; null where the project has no status date.</param>
/// <param name="Lines">Every item, depth first, sisters in the natural order of their numbers.</param>
/// <param name="Revisions">The revisions, in order.</param>
public sealed record ScopeAnswer(
    DateOnly? At,
    IReadOnlyList<ScopeLine> Lines,
    IReadOnlyList<ScopeRevisionLine> Revisions
)
{
    public long Revision { get; init; }

    public required Currency Currency { get; init; }

    /// <summary>False where nothing is traced yet: then no part can be said to be asked for by nobody.</summary>
    public bool HasTraces { get; init; }

    /// <summary>The topmost elements that no item asks for.</summary>
    public IReadOnlyList<PartLine> NobodyAsked { get; init; } = [];

    /// <summary>What the revision in draft does; null without one that follows a signed one.</summary>
    public DraftChanges? Draft { get; init; }

    /// <summary>Queries, the open ones first, each group by number.</summary>
    public IReadOnlyList<QueryLine> Queries { get; init; } = [];

    /// <summary>The newest revision is not signed.</summary>
    public bool IsDraft => Revisions is [.., { Signed: null }];

    /// <summary>The items that hold.</summary>
    public IEnumerable<ScopeLine> Holding => Lines.Where(line => line.Withdrawn is null);

    /// <summary>Deliverables and requirements with a coverage.</summary>
    public int Count(Coverage coverage) => Holding.Count(line => line.Coverage == coverage);

    /// <summary>Items of a kind that hold.</summary>
    public int Count(string kind) => Holding.Count(line => line.Kind == kind);

    /// <summary>Exclusions that an element answers.</summary>
    public IEnumerable<ScopeLine> AnsweredExclusions =>
        Holding.Where(line => line.Kind == "exclusion" && line.Parts.Count > 0);

    public ScopeLine? Line(string? item) =>
        item is null ? null : Lines.FirstOrDefault(line => line.Item == item);
}

/// <summary>A scope item.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Item">Its number.</param>
/// <param name="Parent">The number of the item that it is part of; null for none.</param>
/// <param name="Level">1 for the first level.</param>
/// <param name="Kind">What it states.</param>
/// <param name="Text">The wording.</param>
/// <param name="Clause">Where it stands in the contract.</param>
public sealed record ScopeLine(
    int Id,
    string Item,
    string? Parent,
    int Level,
    string Kind,
    string Text,
    string? Clause
)
{
    /// <summary>For a deliverable or requirement that holds: how far elements answer it.</summary>
    public Coverage? Coverage { get; init; }

    /// <summary>It has items below it that hold.</summary>
    public bool HasItems { get; init; }

    /// <summary>Codes of the elements that answer it, in the order of the breakdown.</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>Its phrases where they stand in the text, in order and without overlap.</summary>
    public IReadOnlyList<PhrasePlace> Phrases { get; init; } = [];

    /// <summary>Phrases that have to be answered and are not.</summary>
    public IReadOnlyList<string> Unanswered { get; init; } = [];

    /// <summary>The revision in which the present wording came; null for the first.</summary>
    public string? Revision { get; init; }

    /// <summary>The revision in which it was withdrawn; null while it holds.</summary>
    public string? Withdrawn { get; init; }

    /// <summary>The wording before the newest change; null if it was not changed, or added by the revision.</summary>
    public string? Before { get; init; }

    public int OpenQueries { get; init; }

    /// <summary>A title for what stands below it.</summary>
    public bool IsHeading => HasItems && !Text.EndsWith('.');
}

/// <param name="Start">Place of the first letter in the text, from 0.</param>
/// <param name="Length">Number of letters.</param>
/// <param name="Phrase">The phrase as it is traced or asked for.</param>
/// <param name="IsAnswered">An element answers it.</param>
public sealed record PhrasePlace(int Start, int Length, string Phrase, bool IsAnswered);

/// <param name="Id">Its id.</param>
/// <param name="Code">Number or letter.</param>
/// <param name="Signed">When it was signed; null while it is a draft.</param>
/// <param name="Note">What it is about.</param>
public sealed record ScopeRevisionLine(int Id, string Code, DateOnly? Signed, string? Note);

/// <param name="Code">The revision in draft.</param>
/// <param name="Changed">Numbers of the items that it changes.</param>
/// <param name="Added">Numbers of those that it adds.</param>
/// <param name="Withdrawn">Numbers of those that it withdraws.</param>
/// <param name="Parts">Codes of the elements that answer any of these.</param>
public sealed record DraftChanges(
    string Code,
    IReadOnlyList<string> Changed,
    IReadOnlyList<string> Added,
    IReadOnlyList<string> Withdrawn,
    IReadOnlyList<string> Parts
)
{
    public bool IsEmpty => Changed.Count + Added.Count + Withdrawn.Count == 0;
}

/// <param name="Code">Code of the element.</param>
/// <param name="Name">Its name.</param>
/// <param name="Budget">Budget, or what was allotted where nothing below it has a budget.</param>
public sealed record PartLine(string Code, string Name, decimal Budget);

/// <param name="Id">Its id.</param>
/// <param name="Query">Its number.</param>
/// <param name="Item">The item that it is about; null for the whole statement.</param>
/// <param name="Text">What is asked.</param>
/// <param name="Asked">When.</param>
/// <param name="AskedBy">By whom.</param>
/// <param name="Answer">The answer; null while it is open.</param>
/// <param name="Answered">When it was answered.</param>
/// <param name="AgeDays">For an open query: days since it was asked; null where that cannot be said.</param>
public sealed record QueryLine(
    int Id,
    string Query,
    string? Item,
    string Text,
    DateOnly? Asked,
    string? AskedBy,
    string? Answer,
    DateOnly? Answered,
    int? AgeDays
)
{
    public bool IsOpen => Answer is null;
}
