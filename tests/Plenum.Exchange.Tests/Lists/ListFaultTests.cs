using System.Text;
using Plenum.Exchange.Lists;

namespace Plenum.Exchange.Tests.Lists;

/// <summary>What is wrong with a list is told with its line, what stands there and what would be right.</summary>
public class ListFaultTests
{
    public static TheoryData<string, string, int, string?, string> Faults =>
        new()
        {
            { "a level is left out", "Plant\n  Intake\n      Screens", 3, null, "level 1 to 3" },
            {
                "an unsteady step",
                "Plant\n  Intake\n     Screens\n  Filters",
                3,
                null,
                "4 or 6 spaces"
            },
            { "the first row deeper than a later one", "  Intake\nPlant", 1, null, "level 1" },
            {
                "tabs and spaces that do not settle",
                "Plant\n    Intake\n\t      Screens",
                3,
                null,
                "tabs, or spaces in equal steps"
            },
            {
                "spaces before a tab",
                "Plant\n\tIntake\n  \tScreens",
                3,
                null,
                "tabs, or spaces in equal steps"
            },
            {
                "a code whose parent is missing",
                "1 Plant\n1.1 Intake\n1.2.1 Screens",
                3,
                "code",
                "a row with the code 1.2"
            },
            {
                "a code twice",
                "1 Plant\n1.1 Intake\n1.1 Filters",
                3,
                "code",
                "a code that no other row has"
            },
            {
                "a row without a code among codes",
                "1 Plant\n1.1 Intake\n1.2 Roads\nFilters",
                4,
                "code",
                "a code such as those of the other rows"
            },
            { "a code without a name", "1 Plant\n1.1 Intake\n1.2", 3, "name", "a name" },
            { "an empty name", "code\tname\nA\tPlant\nB\t", 3, "name", "a name" },
            {
                "a name twice under one parent",
                "Plant\n Pumps\n Tank\n Pumps",
                4,
                "name",
                "a name that no sister has"
            },
            { "an unknown heading", "name\tpart_tpye\nPlant\tpump", 1, "part_tpye", "part_type" },
            { "a heading for the place", "name\tparent\nPlant\t", 1, "parent", "no such column" },
            { "a heading twice", "name\tunit\tUnit\nPlant", 1, "Unit", "every heading once" },
            { "headings without names", "code\tsplit\nA\tpart", 1, null, "a column name" },
            { "a column without a heading", "code\t\tname\nA\t\tPlant", 1, "B", "a heading" },
            { "more cells than headings", "name\tsplit\nPlant\tpart\tMEC", 2, null, "2 cells" },
            {
                "two names in one row",
                "name\t\tsplit\nPlant\tIntake\tpart",
                2,
                "name",
                "one name in a row"
            },
            {
                "cells without headings",
                "Plant\tpart\tMEC",
                1,
                "C",
                "a name, or a code and a name"
            },
            {
                "a level that is no number",
                "level\tname\n1\tPlant\ntwo\tIntake",
                3,
                "level",
                "a whole number from 1"
            },
            {
                "a column of levels with a gap",
                "level\tname\n1\tPlant\n3\tIntake",
                3,
                "level",
                "level 1 to 2"
            },
        };

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_fault_is_told_with_its_line(
        string fault,
        string text,
        int line,
        string? column,
        string expected
    )
    {
        var error = Assert.Single(ListReader.Read(text).Errors.Items);

        Assert.True(
            ("list", line, column, expected)
                == (error.File, error.Row, error.Column, error.Expected),
            $"{fault}: {error}, {error.Expected}"
        );
        Assert.NotEmpty(error.Message);
    }

    [Fact]
    public void All_faults_of_a_list_are_told()
    {
        var errors = ListReader.Read("Plant\n  Intake\n      Screens\n  Intake\n   Roads").Errors;

        Assert.Equal([3, 4, 5], errors.Items.Select(error => error.Row!.Value).Order());
    }

    [Fact]
    public void A_text_longer_than_a_cell_of_a_workbook_is_refused()
    {
        var error = Assert.Single(
            ListReader.Read("Plant\n " + new string('x', 32_768)).Errors.Items
        );

        Assert.Equal(
            (2, "name", "at most 32 767 characters"),
            (error.Row, error.Column, error.Expected)
        );
        Assert.Equal(81, error.Value!.Length);
    }

    [Fact]
    public void More_than_100_000_rows_are_refused()
    {
        var text = new StringBuilder("Plant\n");
        for (var row = 0; row < ListLimits.MostRows; row++)
        {
            text.Append(" Part ").Append(row).Append('\n');
        }

        Assert.Equal(100_001, Assert.Single(ListReader.Read(text.ToString()).Errors.Items).Row);
        Assert.Empty(ListReader.Read(text.ToString()[..^12]).Errors.Items);
    }

    [Fact]
    public void Nothing_is_no_list_and_no_error()
    {
        var list = ListReader.Read(" \n\t\t\n\r\n");

        Assert.Empty(list.Rows);
        Assert.Empty(list.Errors.Items);
        Assert.Equal(0, list.Depth);
    }
}
