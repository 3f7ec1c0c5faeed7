using Plenum.Core;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

public class LookupTests
{
    private static readonly Lookup Yard = new(YardProject());

    [Fact]
    public void The_whole_code_comes_first_then_codes_that_begin_so_then_segments_and_words() =>
        Assert.Equal(["1", "1.1", "1.1.2", "1.2", "2.1", "3.1"], Codes("1"));

    [Fact]
    public void A_word_may_begin_anywhere_in_the_name() => Assert.Equal(["1.2"], Codes("tow"));

    [Fact]
    public void Letters_inside_a_word_come_after_words_that_begin_so() =>
        Assert.Equal(["2.1", "1.1.2"], Codes("rain"));

    [Fact]
    public void Case_and_accents_do_not_matter()
    {
        Assert.Equal(["2"], Codes("ÜBERSTRÖM"));
        Assert.Equal(["2"], Codes("uberstrom"));
        Assert.Equal(["2"], Codes("u\u0308berstro\u0308m"));
        Assert.Equal(["3"], Codes("strasse"));
        Assert.Equal(["3"], Codes("STRAßE"));
        Assert.Equal(["3.1"], Codes("αντλια"));
    }

    [Fact]
    public void Marks_between_words_do_not_matter()
    {
        Assert.Equal("1.1.2", Codes("1 1 2").First());
        Assert.Equal(["1.1.2"], Codes("1-1-2"));
        Assert.Equal(["1.2"], Codes("tower, design"));
    }

    [Fact]
    public void Words_may_be_left_out_and_come_in_any_order_with_those_of_the_code()
    {
        Assert.Equal(["1.2"], Codes("design intake"));
        Assert.Equal(["1.2"], Codes("1.2 design"));
        Assert.Empty(Codes("design overstrom"));
    }

    [Fact]
    public void A_person_is_found_by_name_and_by_code_and_stands_before_elements()
    {
        var hit = Assert.Single(Yard.Find("lind"));
        Assert.Equal(
            new LookupHit("a.lindgren", "Ada Lindgren", "Person in Mechanical", "a.lindgren"),
            hit
        );
        Assert.Equal("a.lindgren", Yard.Find("a.lindgren")[0].Code);
        Assert.Equal(["t.intakis", "1", "1.1", "1.2"], Codes("intak"));
    }

    [Fact]
    public void What_was_found_is_named_with_its_kind_and_place()
    {
        Assert.Equal("Project", Yard.Find("YARD")[0].What);
        Assert.Equal("Level 2", Yard.Find("1")[0].What);
        Assert.Equal("Work package in Intake pumping", Yard.Find("1.1.2")[0].What);
        Assert.Equal("Planning package in Intake", Yard.Find("1.2")[0].What);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("/-.")]
    [InlineData("nowhere")]
    public void Nothing_is_found_for_nothing(string typed) => Assert.Empty(Yard.Find(typed));

    [Fact]
    public void An_empty_project_has_nothing_to_find() =>
        Assert.Empty(new Lookup(Project.Empty).Find("a"));

    [Fact]
    public void People_leave_room_for_elements_and_fill_what_they_leave()
    {
        var text = new TextProject();
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "P"));
        for (var i = 0; i < 20; i++)
        {
            text.Add("people", ("person", $"p{i}"), ("name", $"Otto {i}"));
            text.Add(
                "elements",
                ("code", $"P.{i:00}"),
                ("parent", "P"),
                ("name", i < 9 ? "Otter" : "Oil")
            );
        }

        var lookup = new Lookup(Answers.Import(text));
        var hits = lookup.Find("ott", 12);
        Assert.Equal(12, hits.Count);
        Assert.Equal(4, hits.Count(hit => hit.Person is not null));
        Assert.Equal(12, lookup.Find("otto", 12).Count(hit => hit.Person is not null));
        Assert.Equal(
            ["P.00", "P.01"],
            hits.Where(hit => hit.Person is null).Take(2).Select(hit => hit.Code)
        );
    }

    [Fact]
    public void What_is_found_agrees_with_looking_at_every_code_and_name() =>
        Documents.ForMany(
            (which, project) =>
            {
                var lookup = new Lookup(project);
                var random = new Random(which.Length + project.Tree.Count);
                for (var i = 0; i < 25; i++)
                {
                    var typed = Typed(project, random);
                    var expected = Slowly(project, typed);
                    var found = lookup.Find(typed, 12).Where(hit => hit.Person is null);
                    Assert.True(
                        expected.Take(found.Count()).SequenceEqual(found.Select(hit => hit.Code)),
                        $"{which}, \"{typed}\": {string.Join(", ", expected.Take(12))} expected, "
                            + $"{string.Join(", ", found.Select(hit => hit.Code))} found"
                    );
                    Assert.True(
                        found.Any() || expected.Count == 0 || lookup.Find(typed, 12).Count == 12,
                        $"{which}, \"{typed}\": {expected.Count} expected, none found"
                    );
                }
            }
        );

    /// <summary>A piece of a code or name, such as somebody might type.</summary>
    private static string Typed(Project project, Random random)
    {
        var row = random.Next(project.Tree.Count);
        var whole = random.Next(2) == 0 ? project.Tree.Code(row) : project.Tree.Name(row);
        var from = random.Next(whole.Length);
        return whole.Substring(from, random.Next(1, Math.Min(8, whole.Length - from) + 1));
    }

    /// <summary>
    /// All elements that fit, best first, for ASCII codes and names: by looking at each with the definition in hand.
    /// </summary>
    private static List<string> Slowly(Project project, string typed)
    {
        var words = Words(typed);
        string[][] pieces =
        [
            .. typed.Split((char[]?)null).Select(Words).Where(piece => piece.Length > 0),
        ];
        if (words.Length == 0)
        {
            return [];
        }

        var tree = project.Tree;
        return
        [
            .. Enumerable
                .Range(0, tree.Count)
                .Select(row =>
                    (row, Rank: Rank(Words(tree.Code(row)), Words(tree.Name(row)), words, pieces))
                )
                .Where(one => one.Rank < 5)
                .OrderBy(one => one.Rank)
                .ThenBy(one => one.row)
                .Select(one => tree.Code(one.row)),
        ];
    }

    private static int Rank(string[] code, string[] name, string[] typed, string[][] pieces) =>
        code.SequenceEqual(typed) ? 0
        : Fits(code, typed, 0) ? 1
        : FitsAnywhere(code, typed) || FitsAnywhere(name, typed) ? 2
        : pieces.Length > 1
        && pieces.All(piece => FitsAnywhere(code, piece) || FitsAnywhere(name, piece))
            ? 3
        : Contains(code, typed) || Contains(name, typed) ? 4
        : 5;

    private static bool FitsAnywhere(string[] words, string[] typed) =>
        Enumerable.Range(0, words.Length).Any(from => Fits(words, typed, from));

    /// <summary>All typed words but the last are whole words, and the last begins one.</summary>
    private static bool Fits(string[] words, string[] typed, int from) =>
        from + typed.Length <= words.Length
        && typed.SkipLast(1).SequenceEqual(words.Skip(from).Take(typed.Length - 1))
        && words[from + typed.Length - 1].StartsWith(typed[^1], StringComparison.Ordinal);

    private static bool Contains(string[] words, string[] typed) =>
        string.Join(' ', words).Contains(string.Join(' ', typed), StringComparison.Ordinal);

    private static string[] Words(string text) =>
        string.Concat(
                text.Select(one =>
                    char.IsAsciiLetterOrDigit(one) ? char.ToLowerInvariant(one) : ' '
                )
            )
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<string> Codes(string typed) =>
        Yard.Find(typed).Select(hit => hit.Code);

    private static Project YardProject()
    {
        var text = new TextProject();
        text.Add("units", ("unit", "MEC"), ("name", "Mechanical"));
        text.Add("people", ("person", "a.lindgren"), ("name", "Ada Lindgren"), ("unit", "MEC"));
        text.Add("people", ("person", "t.intakis"), ("name", "Tea Intakis"));
        Add("YARD", "", "Works", "");
        Add("1", "YARD", "Intake", "");
        Add("1.1", "1", "Intake pumping", "");
        Add("1.1.2", "1.1", "Strainer", "");
        Add("1.2", "1", "Intake tower, design", "planning_package");
        Add("2", "YARD", "Überström", "");
        Add("2.1", "2", "Rain", "");
        Add("3", "YARD", "Straße", "");
        Add("3.1", "3", "Ἀντλία Αντλία", "");
        return Answers.Import(text);

        void Add(string code, string parent, string name, string kind) =>
            text.Add(
                "elements",
                ("code", code),
                ("parent", parent),
                ("name", name),
                ("kind", kind)
            );
    }
}
