using Plenum.Core.Breakdown;
using Plenum.Exchange.Lists;

namespace Plenum.Exchange.Tests.Lists;

/// <summary>Every way in which people write down a breakdown gives the same tree.</summary>
public class ListFormTests
{
    private static readonly string[] Plant =
    [
        "1 Plant",
        "2 Intake",
        "3 Screens",
        "3 Pumps",
        "2 Filters",
    ];

    public static TheoryData<string, ListForm> SameTree =>
        new()
        {
            { "Plant\n  Intake\n    Screens\n    Pumps\n  Filters", ListForm.Spaces },
            {
                "Plant\r\n   Intake\r\n      Screens\r\n      Pumps\r\n   Filters\r\n",
                ListForm.Spaces
            },
            {
                "    Plant\n        Intake\n            Screens\n            Pumps\n        Filters",
                ListForm.Spaces
            },
            { "Plant\n\tIntake\n\t\tScreens\n\t\tPumps\n\tFilters", ListForm.Cells },
            {
                "\tPlant\n\t\tIntake\n\n\t\t\tScreens\t\t\n\t\t\tPumps\n\t\tFilters",
                ListForm.Cells
            },
            { "1 Plant\n1.1 Intake\n1.1.1 Screens\n1.1.2 Pumps\n1.2 Filters", ListForm.Codes },
            { "1. Plant\n1.1. Intake\n1.1.1. Screens\n1.1.2. Pumps\n1.2. Filters", ListForm.Codes },
            { "1.0 Plant\n1.1 Intake\n1.1.1 Screens\n1.1.2 Pumps\n1.2 Filters", ListForm.Codes },
            { "A Plant\nA-B Intake\nA-B-C Screens\nA-B-D Pumps\nA-C Filters", ListForm.Codes },
            { "A\tPlant\nA-B\tIntake\nA-B-C\tScreens\nA-B-D\tPumps\nA-C\tFilters", ListForm.Codes },
            {
                "1 Plant\n  1.1 Intake\n    1.1.1 Screens\n    1.1.2 Pumps\n  1.2 Filters",
                ListForm.Spaces
            },
            { "- Plant\n  - Intake\n    - Screens\n    - Pumps\n  - Filters", ListForm.Spaces },
            {
                "level\tname\n3\tPlant\n4\tIntake\n5\tScreens\n5\tPumps\n4\tFilters",
                ListForm.Levels
            },
            {
                "name\t\t\tsplit\nPlant\t\t\tpart\n\tIntake\n\t\tScreens\n\t\tPumps\n\tFilters",
                ListForm.Cells
            },
            {
                "split\tName\npart\tPlant\n\t  Intake\n\t    Screens\n\t    Pumps\n\t  Filters",
                ListForm.Spaces
            },
        };

    [Theory]
    [MemberData(nameof(SameTree))]
    public void All_forms_of_a_list_give_the_same_tree(string text, ListForm form)
    {
        var list = ListReader.Read(text);

        Assert.Empty(list.Errors.Items);
        Assert.Equal(form, list.Form);
        Assert.Equal(Plant, list.Rows.Select(row => $"{row.Level} {row.Name}"));
        Assert.Equal([-1, 0, 1, 1, 0], list.Rows.Select(row => row.Parent));
    }

    [Fact]
    public void A_list_without_levels_is_a_row_of_sisters()
    {
        var list = ListReader.Read("Pump A\nPump B\nValve chamber");

        Assert.Equal(ListForm.Plain, list.Form);
        Assert.All(
            list.Rows,
            row => Assert.Equal((1, -1, null), (row.Level, row.Parent, row.Code))
        );
        Assert.Equal(["Pump A", "Pump B", "Valve chamber"], list.Rows.Select(row => row.Name));
    }

    [Fact]
    public void Codes_that_are_sorted_as_text_are_put_into_the_order_of_their_numbers()
    {
        var list = ListReader.Read("1 Plant\n1.1 Intake\n1.10 Roads\n1.10.1 Gate\n1.2 Filters");

        Assert.Equal(["1", "1.1", "1.2", "1.10", "1.10.1"], list.Rows.Select(row => row.Code));
    }

    [Fact]
    public void A_subtree_by_codes_begins_with_the_shortest_of_them()
    {
        var list = ListReader.Read("03.4.1 Membranes\n03.4.1.1 Racks\n03.4.2 Pumps");

        Assert.Empty(list.Errors.Items);
        Assert.Equal([-1, 0, -1], list.Rows.Select(row => row.Parent));
    }

    [Fact]
    public void Columns_of_elements_come_under_their_headings_in_any_order()
    {
        var list = ListReader.Read(
            "Allotted\tname\tPart type\tcode\n1200.50\tPumps\tpump\tP\n\t  Motor\tmotor\tP.1\n"
        );

        Assert.Empty(list.Errors.Items);
        Assert.Equal([ElementTable.Allotted, ElementTable.PartType], list.Columns);
        Assert.Equal(["1200.50", "pump"], list.Rows[0].Cells);
        Assert.Equal([null, "motor"], list.Rows[1].Cells);
        Assert.Equal(["P", "P.1"], list.Rows.Select(row => row.Code));
    }

    [Fact]
    public void A_cell_in_quotation_marks_may_hold_tabs_and_line_breaks()
    {
        var list = ListReader.Read(
            "name\tdescription\nPumps\t\"Two pumps,\none \"\"hot\"\"\tspare\"\nTank\tOf steel"
        );

        Assert.Empty(list.Errors.Items);
        Assert.Equal("Two pumps,\none \"hot\"\tspare", list.Rows[0].Cells[0]);
        Assert.Equal((4, "Tank"), (list.Rows[1].Line, list.Rows[1].Name));
    }

    [Fact]
    public void Tabs_among_spaces_are_taken_where_they_can_mean_one_thing_only()
    {
        var list = ListReader.Read("Plant\n    Intake\n\t    Screens\n\tFilters");

        Assert.Empty(list.Errors.Items);
        Assert.Equal([1, 2, 3, 2], list.Rows.Select(row => row.Level));
        Assert.Equal(2, Assert.Single(list.Warnings).Line);
    }

    [Fact]
    public void Names_that_begin_with_a_short_word_in_capitals_are_no_codes()
    {
        var list = ListReader.Read("RO train A\nRO train B\nRO train C");

        Assert.All(list.Rows, row => Assert.Null(row.Code));
    }

    [Fact]
    public void Equal_names_under_different_parents_are_accepted()
    {
        var list = ListReader.Read("North\n Pumps\n Data\nSouth\n Pumps\n Data");

        Assert.Empty(list.Errors.Items);
    }

    [Fact]
    public void A_code_that_does_not_show_its_place_is_pointed_out()
    {
        var list = ListReader.Read("1 Plant\n  1.1 Intake\n    1.2.1 Screens\n  1.2 Filters");

        Assert.Empty(list.Errors.Items);
        Assert.Equal(
            "1.2.1 stands under 1.1, which its code does not show.",
            Assert.Single(list.Warnings).Text
        );
    }
}
