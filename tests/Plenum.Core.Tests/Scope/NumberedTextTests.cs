using CsCheck;
using Plenum.Core.Foundation;
using Plenum.Core.Scope.Pasting;

namespace Plenum.Core.Tests.Scope;

/// <summary>
/// A scope statement as it stands in a contract becomes items with their hierarchy, so that every clause can be traced
/// (100 % rule: MIL-STD-881F section 1, GAO-20-195G step 4). How texts are numbered is common practice.
/// </summary>
public class NumberedTextTests
{
    /// <summary>Numbers as the reader gives them: each new item hangs below one that is there.</summary>
    private static readonly Gen<(string Item, string Text)[]> Statements = Gen.Select(
            Gen.Int[0, 1_000_000],
            Gen.Int[0, 9],
            OneOf(
                "Two pumps.",
                "intake",
                "78 500 m³ a day",
                "3.05 kWh",
                "Not included",
                "a) b",
                "“quoted”"
            )
        )
        .Array[1, 60]
        .Select(Numbered);

    [Fact]
    public void Items_written_as_numbered_text_are_read_back_the_same() =>
        Statements.Sample(items =>
        {
            var read = NumberedText.Read(NumberedText.Write(items));
            return read.Faults.Count == 0
                && read.Items.Select(item => (item.Item, item.Text))
                    .SequenceEqual(items.OrderBy(pair => pair.Item, NaturalOrder.Codes));
        });

    [Fact]
    public void Whatever_is_pasted_becomes_items_or_is_refused_with_the_line() =>
        OneOf(
            "1",
            "1.1",
            "2.",
            "4.1.2 Text",
            "a) x",
            "(i) y",
            "- z",
            "",
            "Exclusions",
            "  – w",
            "9) v",
            "words"
        )
            .Array[0, 25]
            .Sample(lines =>
            {
                var read = NumberedText.Read(string.Join('\n', lines));
                return read.Items.Count > 0 != read.Faults.Count > 0
                    && read.Faults.All(fault =>
                        fault.Line >= 1 && fault.Line <= Math.Max(1, lines.Length)
                    )
                    && read.Items.All(item =>
                        item.Parent is null || read.Items.Any(other => other.Item == item.Parent)
                    );
            });

    [Fact]
    public void Numbers_make_the_hierarchy_and_headings_stay_as_parents() =>
        Assert.Equal(
            [
                ("4", null, "Works"),
                ("4.1", "4", "Intake"),
                ("4.1.1", "4.1", "An intake structure draws water at 9 m depth."),
                ("4.1.2", "4.1", "Two pipelines bring the water ashore."),
                ("4.2", "4", "Pre-treatment"),
            ],
            Read(
                """
                4     Works
                4.1   Intake
                4.1.1 An intake structure draws water
                      at 9 m depth.
                4.1.2. Two pipelines bring
                the water ashore.

                4.2
                Pre-treatment
                """
            )
        );

    [Fact]
    public void Labels_and_dashes_below_a_number_are_items_of_their_own() =>
        Assert.Equal(
            [
                ("2", null, "Spares"),
                ("2.a", "2", "pumps:"),
                ("2.a.i", "2.a", "rotors"),
                ("2.a.ii", "2.a", "seals"),
                ("2.b", "2", "motors"),
                ("2.b-1", "2.b", "windings"),
                ("2.b-2", "2.b", "bearings of both ends"),
                ("3", null, "Tools"),
            ],
            Read(
                """
                2. Spares
                a) pumps:
                (i) rotors
                (ii) seals
                b) motors
                   - windings
                   - bearings
                     of both ends
                3. Tools
                """
            )
        );

    [Fact]
    public void A_ninth_letter_is_no_Roman_one()
    {
        var text =
            "1 Parts\n"
            + string.Concat("abcdefghij".Select(letter => $"{letter}) part {letter}\n"));
        Assert.All(Read(text).Skip(1), item => Assert.Equal("1", item.Parent));
    }

    [Theory]
    [InlineData("The plant delivers\n78 500 m³ a day.", "The plant delivers 78 500 m³ a day.")]
    [InlineData(
        "Energy use does not exceed\n3.05 kWh per m³.",
        "Energy use does not exceed 3.05 kWh per m³."
    )]
    [InlineData("Water is pre-\ntreated.", "Water is pre-treated.")]
    public void A_wrapped_line_goes_on_with_its_item(string wrapped, string text)
    {
        var read = NumberedText.Read("4 Works\n4.1 " + wrapped + "\n4.2 Next");
        Assert.Empty(read.Faults);
        Assert.Equal(["4", "4.1", "4.2"], read.Items.Select(item => item.Item));
        Assert.Equal(text, read.Items[1].Text);
    }

    [Fact]
    public void What_could_be_read_otherwise_is_said()
    {
        var note = Assert.Single(NumberedText.Read("4 Works\n4.1 At most\n3.05 kWh.").Notes);
        Assert.Equal(
            (3, "3.05 is out of order: the line is read as going on with 4.1."),
            (note.Line, note.Message)
        );
    }

    [Fact]
    public void Kinds_come_from_plain_headings_and_from_nothing_else()
    {
        var read = NumberedText.Read(
            """
            1 Plant
            1.1 Excluded equipment is stored on site.
            5 Not included, and assumed
            5.1 Housing for operating staff.
            6 Assumptions
            6.1 Ground carries 180 kPa.
            6.2 Acceptance criteria
            6.2.1 Thirty days at rated output.
            """
        );
        Assert.Equal(
            [
                ("1", "requirement", null),
                ("1.1", "requirement", null),
                ("5", "exclusion", "Not included, and assumed"),
                ("5.1", "exclusion", "Not included, and assumed"),
                ("6", "assumption", "Assumptions"),
                ("6.1", "assumption", "Assumptions"),
                ("6.2", "acceptance", "Acceptance criteria"),
                ("6.2.1", "acceptance", "Acceptance criteria"),
            ],
            read.Items.Select(item => (item.Item, item.Kind, item.KindFrom))
        );
    }

    [Fact]
    public void A_heading_without_a_number_gives_its_kind_to_what_follows()
    {
        var read = NumberedText.Read("1 Plant\n\nExclusions\n2 Housing.\n3 Overhead line.");
        Assert.Equal(
            ["requirement", "exclusion", "exclusion"],
            read.Items.Select(item => item.Kind)
        );
        Assert.Equal(3, Assert.Single(read.Notes).Line);
    }

    [Fact]
    public void Items_may_be_part_of_what_the_statement_has_already()
    {
        Assert.Empty(NumberedText.Read("4.9 Noise", new HashSet<string> { "4" }).Faults);
        Assert.Equal(
            "4",
            NumberedText.Read("4.9 Noise", new HashSet<string> { "4" }).Items[0].Parent
        );
    }

    [Theory]
    [InlineData("", 1, "Nothing was pasted.")]
    [InlineData(" \n\n", 1, "Nothing was pasted.")]
    [InlineData("The works\n1 Intake", 1, "There is text before the first number.")]
    [InlineData("- a dash\n1 Intake", 1, "There is text before the first number.")]
    [InlineData("1 Intake\n1.1 Pipe\n1.1 Pump", 3, "1.1 is there already, on line 2.")]
    [InlineData("1 Intake\na) Pipe\na) Pump", 3, "1.a is there already, on line 2.")]
    [InlineData("1 Intake\n2.1 Pipe", 2, "2.1 is part of 2, which is not there.")]
    [InlineData("4.3.1 Pipe", 1, "4.3.1 is part of 4.3, which is not there.")]
    [InlineData("1 Intake\n1.1", 2, "1.1 has no text.")]
    public void Broken_text_is_refused_whole_with_the_line(string text, int line, string message)
    {
        var read = NumberedText.Read(text);
        Assert.Empty(read.Items);
        var fault = read.Faults[0];
        Assert.Equal((line, message), (fault.Line, fault.Message));
        Assert.NotEqual("", fault.Expected);
    }

    [Fact]
    public void More_than_ten_thousand_items_are_refused_and_ten_thousand_are_read()
    {
        string Lines(int count) =>
            "1 All\n"
            + string.Concat(Enumerable.Range(1, count - 1).Select(part => $"1.{part} Part\n"));
        Assert.Equal(10_000, NumberedText.Read(Lines(9_000) + Second(1_000)).Items.Count);
        var fault = Assert.Single(NumberedText.Read(Lines(9_000) + Second(1_001)).Faults);
        Assert.Equal(10_001, fault.Line);
        Assert.Contains("10 000", fault.Message, StringComparison.Ordinal);

        static string Second(int count) =>
            "2 Rest\n"
            + string.Concat(Enumerable.Range(1, count - 1).Select(part => $"2.{part} Part\n"));
    }

    private static Gen<string> OneOf(params string[] texts) =>
        Gen.Int[0, texts.Length - 1].Select(at => texts[at]);

    private static List<(string Item, string? Parent, string Text)> Read(string text)
    {
        var read = NumberedText.Read(text);
        Assert.Empty(read.Faults);
        return [.. read.Items.Select(item => (item.Item, item.Parent, item.Text))];
    }

    private static (string Item, string Text)[] Numbered((int Below, int Sort, string Text)[] picks)
    {
        List<(string Item, string Text)> items = [];
        Dictionary<string, int> parts = new(StringComparer.Ordinal);
        foreach (var (below, sort, text) in picks)
        {
            var parent = items.Count == 0 || sort < 2 ? "" : items[below % items.Count].Item;
            var isDash =
                parent.Contains('-', StringComparison.Ordinal) || sort == 9 && parent.Length > 0;
            var list = parent + (isDash ? "-" : ".");
            var number = parts[list] = parts.GetValueOrDefault(list) + 1;
            items.Add((parent.Length == 0 ? $"{number}" : $"{list}{number}", text));
        }

        return [.. items];
    }
}
