using CsCheck;
using Plenum.Exchange.Lists;

namespace Plenum.Exchange.Tests.Lists;

/// <summary>What is written as a list reads back as the same tree, whatever the names look like.</summary>
public class ListRoundTripTests
{
    // words that look like other things: codes, bullets, headings, cells in quotation marks
    private static readonly string[] Awkward =
    [
        "1.1 Pumps",
        "A Intake",
        "1 Tanks",
        "- Roof",
        "name",
        "code",
        "\"Screens\"",
        "two\tcells",
        "two\nlines",
        " spaces ",
        "level",
        "RO",
        "1.2",
        "Ölsammelgrube",
        "\uFEFFmark",
    ];

    private static readonly Gen<string> Name = Gen.OneOf(
        Gen.Int[0, Awkward.Length - 1].Select(word => Awkward[word]),
        Gen.String[Gen.Char.AlphaNumeric, 1, 12],
        Gen.Select(
            Gen.Int[0, Awkward.Length - 1].Select(word => Awkward[word]),
            Gen.String[Gen.Char.AlphaNumeric, 1, 3],
            (a, b) => a + b
        )
    );

    private static readonly Gen<(int Level, string Code, string Name)[]> Tree = Gen.Select(
            Gen.Int[0, 5],
            Name
        )
        .Array[1, 30]
        .Select(Grown);

    [Theory]
    [InlineData(ListLayout.Indented)]
    [InlineData(ListLayout.Coded)]
    [InlineData(ListLayout.Cells)]
    public void A_tree_that_is_written_reads_back_the_same(ListLayout layout) =>
        Tree.Sample(
            tree =>
            {
                using var text = new StringWriter();
                ListWriter.Write(text, tree, layout);
                var read = ListReader.Read(text.ToString());

                Assert.Empty(read.Errors.Items);
                Assert.Equal(
                    tree.Select(row => (row.Level, row.Name)),
                    read.Rows.Select(row => (row.Level, row.Name))
                );
                Assert.Equal(
                    tree.Select(row => layout == ListLayout.Coded ? row.Code : null),
                    read.Rows.Select(row => row.Code)
                );
            },
            iter: 2_000
        );

    [Fact]
    public void A_tree_reads_the_same_from_its_codes_alone_in_any_order() =>
        Gen.Select(Tree, Gen.Int)
            .Where(drawn => drawn.Item1.Length > 1)
            .Sample(
                (tree, seed) =>
                {
                    var lines = tree.Select(row => $"{row.Code}\tPart {row.Code}").ToArray();
                    new Random(seed).Shuffle(lines);
                    var read = ListReader.Read(string.Join('\n', lines));

                    Assert.Empty(read.Errors.Items);
                    Assert.Equal(
                        tree.Select(row => (row.Level, row.Code)),
                        read.Rows.Select(row => (row.Level, row.Code!))
                    );
                },
                iter: 1_000
            );

    /// <summary>Levels that fit one another, codes that show them, and no two sisters of one name.</summary>
    private static (int Level, string Code, string Name)[] Grown((int Step, string Name)[] drawn)
    {
        List<(int Level, string Code, string Name)> rows = [];
        HashSet<(string, string)> names = [];
        List<int> counts = [];
        foreach (var (step, drawnName) in drawn)
        {
            var level = rows.Count == 0 ? 1 : Math.Clamp(rows[^1].Level + 1 - step, 2, 6);
            counts.RemoveRange(
                Math.Min(counts.Count, level),
                counts.Count - Math.Min(counts.Count, level)
            );
            if (counts.Count < level)
            {
                counts.Add(0);
            }

            counts[level - 1]++;
            var above = string.Join('.', counts.Take(level - 1));
            var name = drawnName;
            while (!names.Add((above, name)))
            {
                name += "'";
            }

            rows.Add((level, string.Join('.', counts), name));
        }

        return [.. rows];
    }
}
