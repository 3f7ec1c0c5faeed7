using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Elements that form no tree, or have a kind that does not fit their place.</summary>
public class BreakdownTests
{
    [Fact]
    public void A_ring_of_parents_is_refused_and_shown_whole() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.60,PH.62,Fence
            PH.61,PH.60,Gate
            PH.62,PH.61,Path
            """
        );

    [Fact]
    public void An_element_within_itself_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.60,PH.60,Fence
            """
        );

    [Fact]
    public void A_ring_of_units_is_refused_and_shown_whole() =>
        Refusal.Of(
            """
            [units.csv]
            unit,name,parent
            X,X,Y
            Y,Y,X
            """
        );

    [Fact]
    public void A_second_root_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            QR,,Quarry road
            """
        );

    [Fact]
    public void A_package_with_elements_below_it_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.50.1,PH.50,Trees
            """
        );

    [Fact]
    public void A_branch_that_is_called_a_package_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name,kind
            PH.20,PH,Civil works,work_package
            """
        );

    [Fact]
    public void A_second_project_below_the_root_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name,kind
            PH.60,PH,Fence,project
            """
        );

    [Fact]
    public void A_budget_on_an_element_that_has_children_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.20,labour,100
            """
        );

    [Fact]
    public void Work_after_an_activity_that_its_set_does_not_have_is_refused() =>
        Refusal.Of(
            """
            [part_types.csv]
            part_type,name
            PUMP,Pump
            [work_sets.csv]
            part_type,activity,after
            PUMP,order,
            PUMP,erect,order;deliver
            """
        );

    [Fact]
    public void A_root_that_is_a_package_is_refused()
    {
        using var terminal = PumpHouse.Empty();
        var files = terminal.Write(
            """
            [elements.csv]
            code,name,kind
            QR,Quarry road,work_package
            """
        );
        Refusal.OfImport(terminal, files);
    }

    [Fact]
    public void A_ring_in_a_file_of_its_own_is_refused_and_shown_whole()
    {
        using var terminal = PumpHouse.Empty();
        var files = terminal.Write(
            """
            [elements.csv]
            code,parent,name
            A,B,First
            B,C,Second
            C,A,Third
            """
        );
        Refusal.OfImport(terminal, files);
    }
}
