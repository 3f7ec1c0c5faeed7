using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Rows that cannot be told apart, or refer to what is not there.</summary>
public class KeyTests
{
    [Fact]
    public void A_key_that_stands_twice_in_a_file_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            dee,Dee Ash
            eli,Eli Oak
            dee,Dee Elm
            """
        );

    [Fact]
    public void A_key_of_several_columns_that_stands_twice_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,100
            PH.50,material,100
            PH.50,labour,200
            """
        );

    [Fact]
    public void A_parent_that_does_not_exist_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.60,PH.6,Fence
            """
        );

    [Fact]
    public void An_empty_key_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            ,Dee Ash
            """
        );

    [Fact]
    public void An_empty_cell_that_must_be_filled_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.60,PH,
            """
        );

    [Fact]
    public void A_code_with_a_space_at_its_end_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name
            "dee ",Dee Ash
            """
        );

    [Fact]
    public void A_person_in_charge_who_is_unknown_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name,person
            PH.60,PH,Fence,zoe
            """
        );

    [Fact]
    public void An_unknown_word_is_refused_and_the_known_are_named() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labor,100
            """
        );

    [Fact]
    public void A_group_outside_its_grouping_is_refused() =>
        Refusal.Of(
            """
            [group_members.csv]
            grouping,package,group
            area,PH.50,N
            """
        );

    [Fact]
    public void A_key_that_stands_in_two_files_of_the_same_table_is_refused()
    {
        using var terminal = PumpHouse.Open();
        terminal.Write(
            """
            [one/people.csv]
            person,name
            dee,Dee Ash
            [two/people.csv]
            person,name
            dee,Dee Elm
            """
        );
        Refusal.OfImport(terminal, ["one", "two"]);
    }

    [Fact]
    public void A_person_who_comes_in_a_file_that_cannot_be_read_is_not_complained_of_in_every_row()
    {
        using var terminal = PumpHouse.Open();
        var files = terminal.Write(
            """
            [people.csv]
            person,nane
            dee,Dee Ash
            [elements.csv]
            code,parent,name,person
            PH.60,PH,Fence,dee
            PH.70,PH,Lighting,dee
            """
        );
        Refusal.OfImport(terminal, files);
    }
}
