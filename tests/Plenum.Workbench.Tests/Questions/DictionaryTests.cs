using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Tests.Questions;

/// <summary>The dictionary sheet of an element, and the sentence above it.</summary>
public class DictionaryTests
{
    [Fact]
    public void Its_money_is_that_of_the_breakdown() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                foreach (var row in new TreeQuestion().Ask(project).Rows)
                {
                    var entry = new DictionaryQuestion(row.Code).Ask(project);
                    Assert.Equal(
                        (
                            row.Name,
                            row.Level,
                            row.Allotted,
                            row.Budget,
                            row.Gap,
                            row.Hours,
                            row.Packages
                        ),
                        (
                            entry.Name,
                            entry.Level,
                            entry.Allotted,
                            entry.Budget,
                            entry.Gap,
                            entry.Hours,
                            entry.Packages
                        )
                    );
                }
            }
        );

    [Fact]
    public void The_person_in_charge_is_that_of_the_nearest_element_that_names_one() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var text = new ProjectText(project);
                var elements = project.Tree.Elements;
                for (var row = 0; row < elements.Count; row++)
                {
                    var at = row;
                    while (at >= 0 && text.Word(elements, at, ElementTable.Person) is null)
                    {
                        at = project.Tree.Parent[at];
                    }

                    var person = new DictionaryQuestion(project.Tree.Code(row)).Ask(project).Person;
                    Assert.Equal(
                        at < 0 ? null : text.Word(elements, at, ElementTable.Person),
                        person?.Code
                    );
                    Assert.Equal(at < 0 || at == row ? null : project.Tree.Code(at), person?.From);
                }
            }
        );

    [Fact]
    public void Its_accounts_are_those_of_its_packages() =>
        GeneratedProjects.Each(
            (project, _) =>
            {
                var placement = project.Placement;
                for (var row = 0; row < project.Tree.Count; row++)
                {
                    var entry = new DictionaryQuestion(project.Tree.Code(row)).Ask(project);
                    int[] packages =
                    [
                        .. Enumerable
                            .Range(0, project.Tree.PackageCount)
                            .Where(package =>
                                project.Tree.PackageRows[package] >= row
                                && project.Tree.PackageRows[package] < project.Tree.SubtreeEnd[row]
                            ),
                    ];
                    Assert.Equal(
                        packages
                            .Select(package => placement.AccountOfPackage[package])
                            .Where(account => account >= 0)
                            .Distinct()
                            .Select(account => placement.Accounts.Codes[account]!),
                        entry.Accounts.Select(account => account.Code)
                    );
                    Assert.Equal(
                        packages.Count(package => placement.AccountOfPackage[package] < 0),
                        entry.PackagesWithoutAccount
                    );
                    Assert.Equal(
                        packages.Count(package =>
                            project.Tree.Inherited(ElementTable.Person)[
                                project.Tree.PackageRows[package]
                            ] == Cell.NoInt
                        ),
                        entry.PackagesWithoutPerson
                    );
                }
            }
        );

    [Fact]
    public void The_sheet_of_a_package_of_the_demo_plant_tells_its_hazards_and_how_it_earns()
    {
        var entry = new DictionaryQuestion("03.4.01.7").Ask(GeneratedProjects.Demo);
        Assert.Equal("Membrane racks, erection", entry.Name);
        Assert.Equal(["lifting", "work at height"], entry.Hazards);
        Assert.Equal("Erection", entry.Activity);
        Assert.Equal((40m, "bolted frames"), (entry.Quantity, entry.QuantityUnit));
        Assert.Equal(("Rosa Velde", "03.4.01"), (entry.Person!.Name, entry.Person.From));
        Assert.NotNull(entry.Technique);
        Assert.Equal("03.4-MEC", Assert.Single(entry.Accounts).Code);
    }

    [Fact]
    public void The_sheet_names_the_scope_items_and_register_entries_of_the_element_itself()
    {
        var entry = new DictionaryQuestion("03.4").Ask(GeneratedProjects.Demo);
        Assert.Equal(["4.3.1", "4.3.7"], entry.Scope.Select(item => item.Item));
        var line = Assert.Single(entry.Register);
        Assert.Equal(("interface", "ELE", "MEC"), (line.Kind, line.Giver, line.Receiver));
        Assert.Equal("Anneke Brandt", line.Owner);
    }

    [Fact]
    public void An_unknown_code_is_refused() =>
        Assert.Throws<QuestionException>(() =>
            new DictionaryQuestion("99.9").Ask(GeneratedProjects.Demo)
        );

    [Theory]
    [InlineData(
        "03.4",
        "RO train D is split by physical part into 10 parts. 7.0 % of it (1.00) belongs to no part."
    )]
    [InlineData(
        "02.5",
        "Cartridge filters is split by physical part into 4 parts. Together they have 0.35 more than the 4.05 it was given."
    )]
    [InlineData("07.5", "Outfall marking and buoys is not broken down: 1.50 belong to no part.")]
    [InlineData("03.4.01.7", "Membrane racks, erection is a work package with a budget of 0.25.")]
    public void The_reading_of_an_element_says_how_it_is_split_and_what_is_missing(
        string code,
        string sentence
    )
    {
        var project = GeneratedProjects.Demo;
        var amounts = new Amounts(500_000_000, project.Settings.Currency);
        Assert.Equal(
            sentence,
            BreakdownSentence.Of(project, project.Tree.Elements.RowOfCode(code), amounts)
        );
    }

    [Theory]
    [InlineData("Rosa Velde", "R. Velde")]
    [InlineData("Rosa van der Velde", "R. van der Velde")]
    [InlineData("Velde", "Velde")]
    [InlineData("R. Velde", "R. Velde")]
    public void A_name_is_shortened_to_a_letter_and_the_rest(string name, string shortened) =>
        Assert.Equal(shortened, PersonNames.Short(name));

    [Theory]
    [InlineData("package_without_account", "Package without account")]
    [InlineData("gap", "Gap")]
    public void A_rule_is_the_title_of_its_findings(string rule, string title) =>
        Assert.Equal(title, RuleWords.Title(rule));
}
