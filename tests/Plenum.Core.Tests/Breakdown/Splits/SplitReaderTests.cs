using Plenum.Core.Breakdown.Splits;

namespace Plenum.Core.Tests.Breakdown.Splits;

/// <summary>How the logic of a split is read from its parts. Names are invented; the labels are told of in README.md.</summary>
public class SplitReaderTests
{
    private static readonly SplitWords English = SplitWords.Of("en")!;

    public static TheoryData<string, bool?> Sets =>
        new()
        {
            { "all", null },
            { "those that the list was tuned on", false },
            { "those that were set aside", true },
        };

    [Theory]
    [MemberData(nameof(Sets))]
    public void At_least_seventy_per_cent_of_labelled_splits_are_read_right_and_at_most_five_wrong(
        string which,
        bool? aside
    )
    {
        var splits = LabelledSplit
            .All.Where(split => aside is null || split.IsAside == aside)
            .ToList();
        var score = Score.Of(splits, English);
        TestContext.Current.TestOutputHelper!.WriteLine($"{which}: {score}");
        Assert.True(
            score.Right >= 0.70 * score.All && score.Wrong <= 0.05 * score.All,
            $"{which}: {score}"
        );
    }

    [Fact]
    public void There_are_at_least_150_labelled_splits_and_a_third_of_them_are_set_aside()
    {
        Assert.InRange(LabelledSplit.All.Count, 150, int.MaxValue);
        Assert.InRange(
            LabelledSplit.All.Count(split => split.IsAside) * 1.0 / LabelledSplit.All.Count,
            0.32,
            0.36
        );
        foreach (var logic in SplitLogic.Names.Words)
        {
            Assert.InRange(
                LabelledSplit.All.Count(split => split.Label == logic),
                10,
                int.MaxValue
            );
        }
    }

    [Fact]
    public void The_English_list_has_at_least_600_words_over_the_seven_logics()
    {
        var counts = English.CountByLogic();
        Assert.InRange(counts.Sum(), 600, int.MaxValue);
        Assert.All(counts, count => Assert.InRange(count, 30, int.MaxValue));
    }

    [Fact]
    public void Without_words_nothing_is_read() =>
        Assert.Equal(LabelledSplit.All.Count, Score.Of(LabelledSplit.All, SplitWords.None).Silent);

    [Theory]
    [InlineData("phase", "Pump design", "Pump purchase", "Pump erection")]
    [InlineData("discipline", "Civil design", "Mechanical design", "Electrical design")]
    [InlineData("place", "North section", "South section")]
    [InlineData("contract", "Lot 1", "Lot 2", "Lot 3")]
    [InlineData("contract", "Civil contract", "Turbine contract", "Electrical contract")]
    [InlineData("part", "Drives for intake pumps", "Foundations for pumps", "Valves")]
    [InlineData("part", "Pump A", "Pump B")]
    public void What_tells_sisters_apart_decides(string logic, params string[] names) =>
        Assert.Equal(logic, Logic(Read(names)));

    [Fact]
    public void A_part_of_another_logic_is_named_with_the_word_that_betrays_it()
    {
        var reading = Read("Section 1", "Section 2", "Section 3", "Line valves");
        Assert.Equal(SplitLogic.Place, reading.Logic);
        Assert.Equal(
            new SplitEvidence(3, SplitLogic.Part, "valve"),
            Assert.Single(reading.Strangers)
        );
    }

    [Fact]
    public void Unknown_names_numbers_and_single_parts_say_nothing()
    {
        Assert.Equal("", Logic(Read("Alpha", "Beta", "Gamma")));
        Assert.Equal("", Logic(Read("1", "2", "3")));
        Assert.Equal("", Logic(Read("Pump")));
        Assert.Equal("", Logic(Read("Pump", "Omega", "Sigma", "Kappa", "Delta")));
    }

    [Fact]
    public void Part_types_units_and_activities_speak_where_names_do_not()
    {
        SplitPart Part(string name, int logic) => new(name, new SplitHint(logic, 3, "a hint"));
        var reader = new SplitReader(English);
        foreach (var logic in new[] { SplitLogic.Part, SplitLogic.Organisation, SplitLogic.Phase })
        {
            var reading = reader.Read([Part("Alpha", logic), Part("Beta", logic)]);
            Assert.Equal(logic, reading.Logic);
            Assert.Equal("a hint", reading.Evidence[0].Told);
        }
    }

    [Fact]
    public void Another_language_is_another_list()
    {
        var german = SplitWords.Parse(
            """
            word,role,strength
            planung,phase,3
            montage,phase,3
            inbetriebnahme,phase,3
            pumpe,part,3
            behälter,part,3
            für,divider,1
            und,joiner,1
            n,ending,1
            """
        );
        var reader = new SplitReader(german);
        Assert.Equal(
            SplitLogic.Phase,
            reader.Read([new("Planung"), new("Montage"), new("Inbetriebnahme")]).Logic
        );
        Assert.Equal(
            SplitLogic.Part,
            reader.Read([new("Pumpen für Planung"), new("Behälter")]).Logic
        );
    }

    [Fact]
    public void A_list_with_a_role_that_there_is_not_is_refused() =>
        Assert.Throws<FormatException>(() =>
            SplitWords.Parse("word,role,strength\npump,thing,3\n")
        );

    private static SplitReading Read(params string[] names) =>
        new SplitReader(English).Read([.. names.Select(name => new SplitPart(name))]);

    private static string Logic(SplitReading reading) =>
        reading.Logic == SplitLogic.Unknown || reading.IsMixed
            ? ""
            : SplitLogic.Names.Format(reading.Logic);
}
