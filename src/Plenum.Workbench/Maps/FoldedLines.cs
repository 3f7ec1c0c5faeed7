namespace Plenum.Workbench.Maps;

/// <summary>
/// The words of many texts in one piece of memory, a line each, to be searched from end to end. Every line begins with
/// a line feed, every word with a space; a line feed stands behind the last.
/// </summary>
internal sealed class FoldedLines
{
    private const byte LineFeed = (byte)'\n';
    private readonly byte[] text;
    private readonly int[] start;

    /// <exception cref="OverflowException">The words take more than 2 GB.</exception>
    public FoldedLines(int count, Func<int, string> textOf)
    {
        List<byte> folded = [];
        start = new int[count + 1];
        for (var line = 0; line < count; line++)
        {
            start[line] = folded.Count;
            folded.Add(LineFeed);
            FoldedText.Append(textOf(line), folded);
        }

        start[count] = folded.Count;
        folded.Add(LineFeed);
        text = [.. folded];
    }

    /// <summary>Lines that are these words and no others.</summary>
    public IEnumerable<int> Equal(byte[] words) => LinesWith([LineFeed, .. words, LineFeed]);

    /// <summary>Lines that begin with these words; the last may be longer.</summary>
    public IEnumerable<int> BeginningWith(byte[] words) => LinesWith([LineFeed, .. words]);

    /// <summary>Lines with these words one after another; the last may be longer.</summary>
    public IEnumerable<int> WithWords(byte[] words) => LinesWith(words);

    /// <summary>Lines with these letters anywhere.</summary>
    public IEnumerable<int> Containing(byte[] words) => LinesWith(words[1..]);

    /// <summary>True if the line has these words one after another; the last may be longer.</summary>
    public bool HasWords(int line, ReadOnlySpan<byte> words) =>
        text.AsSpan(start[line], start[line + 1] - start[line]).IndexOf(words) >= 0;

    private IEnumerable<int> LinesWith(byte[] sought)
    {
        for (var line = 0; text.AsSpan(start[line]).IndexOf(sought) is var found and >= 0; line++)
        {
            line = LineAt(start[line] + found, line);
            yield return line;
        }
    }

    /// <summary>The line of a place, which is not before a given line; quick if it is near.</summary>
    private int LineAt(int place, int line)
    {
        var step = 1;
        while (line + step < start.Length && start[line + step] <= place)
        {
            line += step;
            step *= 2;
        }

        var found = Array.BinarySearch(start, line, Math.Min(step, start.Length - line), place);
        return found >= 0 ? found : ~found - 1;
    }
}
