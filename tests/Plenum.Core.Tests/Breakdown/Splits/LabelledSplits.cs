using System.Globalization;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Tests.House;

namespace Plenum.Core.Tests.Breakdown.Splits;

/// <summary>A split that a person has labelled; see the README beside the file.</summary>
internal sealed record LabelledSplit(
    int Number,
    string Parent,
    string Label,
    bool IsAside,
    IReadOnlyList<string> Children
)
{
    private static readonly string File = Path.Combine(
        Repository.Root,
        "tests",
        "Plenum.Core.Tests",
        "Breakdown",
        "Splits",
        "labelled-splits.csv"
    );

    public static IReadOnlyList<LabelledSplit> All { get; } =
    [.. System.IO.File.ReadLines(File).Skip(1).Select(Read)];

    /// <summary>What the reader says, in the words of the labels; null where it says nothing.</summary>
    public string? ReadBy(SplitReader reader)
    {
        var reading = reader.Read([.. Children.Select(name => new SplitPart(name))]);
        return reading.IsMixed ? "mixed"
            : reading.Logic == SplitLogic.Unknown ? null
            : SplitLogic.Names.Format(reading.Logic);
    }

    private static LabelledSplit Read(string line)
    {
        var cells = Cells(line);
        return new LabelledSplit(
            int.Parse(cells[0], CultureInfo.InvariantCulture),
            cells[3],
            cells[4],
            cells[5] == "aside",
            [.. cells[6].Split(';').Select(name => name.Trim())]
        );
    }

    private static List<string> Cells(string line)
    {
        List<string> cells = [""];
        var quoted = false;
        foreach (var letter in line)
        {
            quoted ^= letter == '"';
            if (letter == ',' && !quoted)
            {
                cells.Add("");
            }
            else if (letter != '"')
            {
                cells[^1] += letter;
            }
        }

        return cells;
    }
}

/// <summary>How often a reader was right, wrong, and silent.</summary>
internal readonly record struct Score(int Right, int Wrong, int Silent)
{
    public int All => Right + Wrong + Silent;

    public static Score Of(IEnumerable<LabelledSplit> splits, SplitWords words)
    {
        var reader = new SplitReader(words);
        var score = default(Score);
        foreach (var split in splits)
        {
            var read = split.ReadBy(reader);
            score =
                read is null ? score with { Silent = score.Silent + 1 }
                : read == split.Label ? score with { Right = score.Right + 1 }
                : score with { Wrong = score.Wrong + 1 };
        }

        return score;
    }
}
