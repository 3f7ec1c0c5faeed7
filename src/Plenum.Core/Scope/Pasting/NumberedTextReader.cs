using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Core.Scope.Pasting;

/// <summary>Reads a numbered text from its first line to its last.</summary>
internal sealed class NumberedTextReader(string[] lines, IReadOnlySet<string> known)
{
    private readonly List<ReadItem> items = [];
    private readonly Dictionary<string, ReadItem> byNumber = new(StringComparer.Ordinal);
    private readonly List<PasteFault> faults = [];
    private readonly List<PasteNote> notes = [];
    private readonly LabelLists lists = new();
    private string? lastNumber;
    private int lastTop;
    private (string Kind, string Words)? heading;

    public PastedStatement Read()
    {
        for (var at = 0; at < lines.Length && items.Count <= NumberedText.MostItems; at++)
        {
            var line = lines[at].Trim();
            if (line.Length > 0)
            {
                ReadLine(at, line);
            }
        }

        CheckWhole();
        return faults.Count > 0
            ? new PastedStatement([], faults, notes)
            : new PastedStatement(WithKinds(), [], notes);
    }

    private void ReadLine(int at, string line)
    {
        if (
            LineMarks.Number().Match(line) is { Success: true } number
            && ReadNumber(at, line, number)
        )
        {
            return;
        }

        if (LineMarks.Label().Match(line) is { Success: true } label)
        {
            var style = label.Groups["open"].Length > 0 ? '(' : ')';
            if (ReadLabel(at, style, label.Groups["label"].Value, label.Groups["text"].Value))
            {
                return;
            }
        }
        else if (LineMarks.Dash().Match(line) is { Success: true } dash && items.Count > 0)
        {
            var depth = lines[at].Length - lines[at].TrimStart().Length;
            var parent = lists.ParentOfDash(depth, items[^1].Item);
            Add(at, parent, lists.NextDash(depth, parent), dash.Groups["text"].Value);
            return;
        }

        if (IsLoneHeading(at, line))
        {
            heading = (KindWords.Of(line)!, line);
            notes.Add(
                new PasteNote(
                    at + 1,
                    $"\"{line}\" has no number: it is read as a heading, and what follows as {heading.Value.Kind}."
                )
            );
        }
        else if (items.Count == 0)
        {
            faults.Add(
                new PasteFault(
                    at + 1,
                    Short(line),
                    "a number such as 1 or 4.1 at the beginning",
                    "There is text before the first number."
                )
            );
        }
        else
        {
            items[^1].GoOn(line);
        }
    }

    /// <summary>False if the number is no mark but belongs to the text of the item before.</summary>
    private bool ReadNumber(int at, string line, System.Text.RegularExpressions.Match match)
    {
        var number = match.Groups["number"].Value;
        var text = match.Groups["text"].Value.Trim();
        var end = match.Groups["end"].Value;
        var isTop = int.TryParse(
            number,
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var top
        );
        if (items.Count > 0)
        {
            if (isTop && end == ")" && lists.TakesDigits(top))
            {
                return false;
            }

            if (
                isTop
                && end.Length == 0
                && top != lastTop + 1
                && !(top > lastTop && HasPartsLater(at, number))
            )
            {
                return GoesOn(at, number);
            }

            if (!isTop && !byNumber.ContainsKey(number) && !Follows(number, text))
            {
                return GoesOn(at, number);
            }
        }

        var parent = ParentOf(number);
        if (parent is not null && !byNumber.ContainsKey(parent) && !known.Contains(parent))
        {
            faults.Add(
                new PasteFault(
                    at + 1,
                    Short(line),
                    $"{parent} before it",
                    $"{number} is part of {parent}, which is not there."
                )
            );
        }

        lists.Clear();
        lastNumber = number;
        lastTop = int.Parse(number.Split('.', '-')[0], CultureInfo.InvariantCulture);
        Add(at, parent, number, text);
        return true;
    }

    /// <summary>
    /// A number with parts is a mark if it comes after the one before, and either its parent is there or its text begins
    /// like that of an item.
    /// </summary>
    private bool Follows(string number, string text) =>
        (lastNumber is null || NaturalOrder.Codes.Compare(number, lastNumber) > 0)
        && (
            ParentOf(number) is not { } parent
            || byNumber.ContainsKey(parent)
            || known.Contains(parent)
            || text.Length == 0
            || !(char.IsLower(text[0]) || text[0] == '%')
        );

    private bool GoesOn(int at, string number)
    {
        notes.Add(
            new PasteNote(
                at + 1,
                $"{number} is out of order: the line is read as going on with {items[^1].Item}."
            )
        );
        items[^1].GoOn(lines[at].Trim());
        return true;
    }

    private bool ReadLabel(int at, char style, string label, string text)
    {
        if (items.Count == 0)
        {
            return false;
        }

        var parent = lists.ParentOfLabel(style, label, items[^1].Item);
        if (parent is null)
        {
            return false;
        }

        Add(at, parent, parent + "." + label, text);
        return true;
    }

    private void Add(int at, string? parent, string number, string text)
    {
        if (byNumber.TryGetValue(number, out var first))
        {
            faults.Add(
                new PasteFault(
                    at + 1,
                    Short(lines[at].Trim()),
                    "each number once",
                    $"{number} is there already, on line {first.Line}."
                )
            );
            return;
        }

        var item = new ReadItem(number, parent, at + 1, heading);
        item.GoOn(text);
        items.Add(item);
        byNumber.Add(number, item);
    }

    private bool HasPartsLater(int at, string number) =>
        lines
            .Skip(at + 1)
            .Any(line => line.TrimStart().StartsWith(number + ".", StringComparison.Ordinal));

    /// <summary>A line between blank lines, or before the first number, that names a kind.</summary>
    private bool IsLoneHeading(int at, string line) =>
        (at == 0 || lines[at - 1].AsSpan().IsWhiteSpace()) && KindWords.Of(line) is not null;

    private void CheckWhole()
    {
        if (items.Count == 0 && faults.Count == 0)
        {
            faults.Add(
                new PasteFault(
                    1,
                    "",
                    "lines that begin with numbers such as 1, 1.1, 1.2",
                    "Nothing was pasted."
                )
            );
        }

        if (items.Count > NumberedText.MostItems)
        {
            faults.Add(
                new PasteFault(
                    items[^1].Line,
                    items[^1].Item,
                    "at most 10 000 items at once",
                    "There are more than 10 000 items; paste the statement in parts."
                )
            );
        }

        faults.AddRange(
            items
                .Where(item => item.Text.Length == 0)
                .Select(item => new PasteFault(
                    item.Line,
                    item.Item,
                    "a wording after the number",
                    $"{item.Item} has no text."
                ))
        );
        faults.Sort((one, other) => one.Line.CompareTo(other.Line));
    }

    /// <summary>Each item with the kind that the nearest heading on the way up names.</summary>
    private List<PastedItem> WithKinds()
    {
        var kinds = new Dictionary<string, (string Kind, string? From)>(StringComparer.Ordinal);
        List<PastedItem> read = [];
        foreach (var item in items)
        {
            (string Kind, string? From) kind =
                KindWords.Of(item.Text) is { } own ? (own, item.Text)
                : item.Parent is not null && kinds.TryGetValue(item.Parent, out var above) ? above
                : item.Heading is { } lone ? (lone.Kind, lone.Words)
                : ("requirement", null);
            kinds[item.Item] = kind;
            read.Add(
                new PastedItem(item.Item, item.Parent, kind.Kind, item.Text, item.Line, kind.From)
            );
        }

        return read;
    }

    private static string? ParentOf(string number) =>
        number.LastIndexOfAny(['.', '-']) is var at and > 0 ? number[..at] : null;

    private static string Short(string line) => line.Length <= 60 ? line : line[..59] + "…";

    /// <summary>An item whose text may still go on.</summary>
    private sealed class ReadItem(
        string item,
        string? parent,
        int line,
        (string Kind, string Words)? heading
    )
    {
        public string Item => item;

        public string? Parent => parent;

        public int Line => line;

        public (string Kind, string Words)? Heading => heading;

        public string Text { get; private set; } = "";

        /// <summary>A word that was divided at its hyphen at the end of a line is joined again.</summary>
        public void GoOn(string more)
        {
            var isDivided =
                Text.Length > 1
                && Text[^1] == '-'
                && char.IsLetter(Text[^2])
                && more.Length > 0
                && char.IsLower(more[0]);
            Text = (Text.Length == 0 || isDivided ? Text + more : Text + " " + more).Trim();
        }
    }
}
