using System.Globalization;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

public class BreakdownLensTests
{
    private static readonly string[] Logics =
    [
        "part",
        "function",
        "phase",
        "place",
        "discipline",
        "organisation",
        "contract",
    ];

    [Fact]
    public void The_class_of_an_element_is_the_logic_that_the_breakdown_names() =>
        Documents.ForMany(
            (which, project) =>
            {
                var lens = new LensQuestion(LensQuestion.Breakdown).Ask(project);
                var read = Documents.Read(lens);
                var rows = new TreeQuestion().Ask(project).Rows;
                Assert.Equal(rows.Count, read.ClassOf.Count);
                for (var i = 0; i < rows.Count; i++)
                {
                    var hasParts = i + 1 < rows.Count && rows[i + 1].Level > rows[i].Level;
                    var expected =
                        rows[i].Kind.EndsWith("package", StringComparison.Ordinal) ? "package"
                        : !hasParts ? "not_split"
                        : string.IsNullOrWhiteSpace(rows[i].Split) ? "no_logic"
                        : Logics.Contains(rows[i].Split) ? rows[i].Split
                        : "own " + rows[i].Split;
                    var found = lens.Legend.Classes[read.ClassOf[i]].Key;
                    Assert.True(expected == found, $"{which}, {rows[i]}: {found} found");
                }
            }
        );

    [Fact]
    public void The_seven_logics_stand_first_each_with_its_sign()
    {
        var legend = new LensQuestion(LensQuestion.Breakdown).Ask(Documents.Demo).Legend;
        Assert.Equal(Logics, legend.Classes.Take(7).Select(one => one.Glyph));
        Assert.Equal(
            ["c1", "c2", "c3", "c4", "c5", "c6", "c7"],
            legend.Classes.Take(7).Select(one => one.Fill)
        );
        Assert.Equal("physical part", legend.Classes[0].Word);
        Assert.True(legend.Findings);
        Assert.False(legend.Outlines);
    }

    [Fact]
    public void The_legend_lists_what_there_is()
    {
        var legend = new LensQuestion(LensQuestion.Breakdown).Ask(Documents.Demo).Legend;
        Assert.Equal(
            ["physical part", "function", "phase", "place", "package"],
            legend.Classes.Where(one => one.Listed).Select(one => one.Word)
        );
    }

    [Fact]
    public void A_logic_of_the_projects_own_has_a_class_with_its_word_and_those_beyond_sixteen_share_one()
    {
        var text = new TextProject();
        text.Add(
            "elements",
            ("code", "P"),
            ("parent", ""),
            ("name", "P"),
            ("split", "Bauabschnitt")
        );
        for (var i = 1; i <= 20; i++)
        {
            var number = i.ToString("00", CultureInfo.InvariantCulture);
            text.Add(
                "elements",
                ("code", "P." + number),
                ("parent", "P"),
                ("name", number),
                ("split", i == 1 ? "bauabschnitt" : "way " + number)
            );
            text.Add(
                "elements",
                ("code", $"P.{number}.1"),
                ("parent", "P." + number),
                ("name", number)
            );
        }

        var project = Answers.Import(text);
        var lens = new LensQuestion(LensQuestion.Breakdown).Ask(project);
        Assert.Equal(lens.ClassOf.Length, Documents.Read(lens).ClassOf.Count);
        Assert.Equal("Bauabschnitt", lens.ClassAt(0).Word);
        Assert.Equal("Bauabschnitt", lens.ClassAt(1).Word);
        Assert.Equal("way 02", lens.ClassAt(3).Word);
        Assert.Equal("way 16", lens.ClassAt(31).Word);
        Assert.Equal("another logic", lens.ClassAt(33).Word);
        Assert.Equal("another logic", lens.ClassAt(39).Word);
        Assert.Equal("package", lens.ClassAt(40).Word);
        Assert.Null(lens.ClassAt(0).Glyph);
    }
}
