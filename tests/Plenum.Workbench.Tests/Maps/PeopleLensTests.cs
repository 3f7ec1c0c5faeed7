using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Oracle;

namespace Plenum.Workbench.Tests.Maps;

public class PeopleLensTests
{
    [Fact]
    public void A_package_shows_the_person_that_it_or_the_nearest_ancestor_names() =>
        Documents.ForMany(
            (which, project) =>
            {
                var people = project[PersonTable.Definition];
                foreach (var picked in people.Codes.ToArray().OfType<string>().Take(3).Append(null))
                {
                    var lens = new LensQuestion(LensQuestion.People, null, picked).Ask(project);
                    var read = Documents.Read(lens);
                    var tree = project.Tree;
                    foreach (var row in tree.PackageRows.ToArray())
                    {
                        var person = InCharge(project, row);
                        var expected =
                            person is null ? "nobody"
                            : person == picked ? "picked"
                            : IsOfUnitOf(people, person, picked) ? "same_unit"
                            : "others";
                        var found = lens.Legend.Classes[read.ClassOf[row]].Key;
                        Assert.True(expected == found, $"{which}, {tree.Code(row)}: {found} found");
                    }
                }
            }
        );

    [Fact]
    public void A_branch_without_a_person_says_what_its_packages_say_together()
    {
        var lens = new LensQuestion(LensQuestion.People, null, "ann").Ask(Organisation());
        Assert.Equal(
            [
                "others",
                "picked",
                "picked",
                "same_unit",
                "picked",
                "same_unit",
                "others",
                "same_unit",
                "others",
                "picked",
                "nobody",
                "picked",
            ],
            Enumerable.Range(0, 12).Select(row => lens.ClassAt(row).Key)
        );
    }

    [Fact]
    public void A_person_of_a_branch_is_what_the_branch_shows_whatever_its_packages_say()
    {
        var text = new TextProject();
        text.Add("people", ("person", "ann"));
        text.Add("people", ("person", "bo"));
        text.Add("elements", ("code", "P"), ("parent", ""), ("name", "P"), ("person", "ann"));
        text.Add("elements", ("code", "P.1"), ("parent", "P"), ("name", "P.1"), ("person", "bo"));
        text.Add("elements", ("code", "P.2"), ("parent", "P"), ("name", "P.2"));
        var lens = new LensQuestion(LensQuestion.People, null, "ann").Ask(Answers.Import(text));
        Assert.Equal(
            ["picked", "others", "picked"],
            Enumerable.Range(0, 3).Select(row => lens.ClassAt(row).Key)
        );
    }

    [Fact]
    public void The_legend_names_the_person_and_the_unit()
    {
        var lens = new LensQuestion(LensQuestion.People, null, "ann").Ask(Organisation());
        Assert.Equal("Who answers for each part; Ann Birch is picked", lens.Text.Says);
        Assert.Equal(
            ["Ann Birch", "same unit, Mechanical", "other people", "nobody"],
            lens.Legend.Classes.Select(one => one.Word)
        );
        Assert.Equal("", lens.ValueText(3));
        Assert.Equal("Bo Larch", lens.ValueText(5));
        Assert.Equal("same unit, Mechanical, Bo Larch", lens.Words(5));
    }

    [Fact]
    public void Without_a_picked_person_the_legend_says_somebody_or_nobody()
    {
        var lens = new LensQuestion(LensQuestion.People).Ask(Organisation());
        Assert.Equal(
            ["somebody", "nobody"],
            lens.Legend.Classes.Where(one => one.Listed).Select(one => one.Word)
        );
    }

    [Fact]
    public void An_unknown_person_is_refused()
    {
        var refusal = Assert.Throws<QuestionException>(() =>
            new LensQuestion(LensQuestion.People, null, "nemo").Ask(Organisation())
        );
        Assert.Equal("No person has the code \"nemo\".", refusal.Message);
    }

    /// <summary>Ann and Bo belong to one unit, Cy to another.</summary>
    private static Project Organisation()
    {
        var text = new TextProject();
        text.Add("units", ("unit", "MEC"), ("name", "Mechanical"));
        text.Add("units", ("unit", "ELE"), ("name", "Electrical"));
        text.Add("people", ("person", "ann"), ("name", "Ann Birch"), ("unit", "MEC"));
        text.Add("people", ("person", "bo"), ("name", "Bo Larch"), ("unit", "MEC"));
        text.Add("people", ("person", "cy"), ("name", "Cy Rowan"), ("unit", "ELE"));
        Add("P", "", "");
        Add("P.1", "P", "");
        Add("P.1.1", "P.1", "ann");
        Add("P.2", "P", "");
        Add("P.2.1", "P.2", "ann");
        Add("P.2.2", "P.2", "bo");
        Add("P.3", "P", "");
        Add("P.3.1", "P.3", "bo");
        Add("P.3.2", "P.3", "cy");
        Add("P.4", "P", "");
        Add("P.4.1", "P.4", "");
        Add("P.4.2", "P.4", "ann");
        return Answers.Import(text);

        void Add(string code, string parent, string person) =>
            text.Add(
                "elements",
                ("code", code),
                ("parent", parent),
                ("name", code),
                ("person", person)
            );
    }

    private static string? InCharge(Project project, int row)
    {
        var people = project[PersonTable.Definition];
        for (var at = row; at >= 0; at = project.Tree.Parent[at])
        {
            var id = project.Tree.Elements.Ints(ElementTable.Person)[at];
            if (id != Cell.NoInt)
            {
                return people.Codes[people.RowOf(id)];
            }
        }

        return null;
    }

    private static bool IsOfUnitOf(Table people, string person, string? picked)
    {
        var units = people.Ints(PersonTable.Unit);
        return picked is not null
            && units[people.RowOfCode(picked)] != Cell.NoInt
            && units[people.RowOfCode(person)] == units[people.RowOfCode(picked)];
    }
}
