namespace Plenum.Core.Scope.Pasting;

/// <summary>What a pasted text would become; nothing has been done yet.</summary>
/// <param name="Items">The items in the order of the text, each after its parent. Empty where something is wrong.</param>
/// <param name="Faults">Why it cannot be taken; empty if it can.</param>
/// <param name="Notes">What was read in one of two possible ways, for whoever looks at the preview.</param>
public sealed record PastedStatement(
    IReadOnlyList<PastedItem> Items,
    IReadOnlyList<PasteFault> Faults,
    IReadOnlyList<PasteNote> Notes
);

/// <summary>One scope item read from pasted text.</summary>
/// <param name="Item">Its number, which is its clause too.</param>
/// <param name="Parent">The number of the item that it is part of; null for none.</param>
/// <param name="Kind">A word of <see cref="ScopeTable.Kinds"/>.</param>
/// <param name="Text">The wording on one line.</param>
/// <param name="Line">The line of the text on which it begins, from 1.</param>
/// <param name="KindFrom">The words of the heading that its kind was guessed from; null if none says anything.</param>
public sealed record PastedItem(
    string Item,
    string? Parent,
    string Kind,
    string Text,
    int Line,
    string? KindFrom = null
);

/// <summary>What keeps a pasted text from being taken.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What would have been right.</param>
/// <param name="Message">The complaint as a sentence.</param>
public sealed record PasteFault(int Line, string Found, string Expected, string Message);

/// <summary>How a line was read that could have been read otherwise.</summary>
public sealed record PasteNote(int Line, string Message);
