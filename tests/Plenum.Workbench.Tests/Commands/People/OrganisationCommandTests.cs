using Plenum.Core.Breakdown;
using Plenum.Core.People;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.People;

namespace Plenum.Workbench.Tests.Commands.People;

/// <summary>Units, people, persons in charge, delegations. The steps of a delegation are common practice; no source.</summary>
public sealed class OrganisationCommandTests
{
    private static readonly DateOnly Day = new(2026, 2, 2);

    [Fact]
    public void Units_and_people_get_codes_from_their_names_that_are_free()
    {
        var desk = PumpStation.Desk();
        desk.Edit(new AddUnitCommand("Marine works", desk.Unit("ENG")), "Ann");
        desk.Edit(new AddPersonCommand("Cy Lund", desk.Unit("MW")), "Ann");
        desk.Edit(new AddPersonCommand("Cora Lund"), "Ann");
        Assert.Equal("Cora Lund", desk.Cell(PersonTable.Name, desk.Person("c.lund2")));
        Assert.Equal("ENG", desk.Cell(UnitTable.Parent, desk.Unit("MW")));
    }

    [Fact]
    public void A_unit_does_not_belong_to_one_of_its_own()
    {
        var desk = PumpStation.Desk();
        var wrong = Refused(desk, new MoveUnitCommand(desk.Unit("ENG"), desk.Unit("MEC")));
        Assert.Equal(
            "Engineering cannot belong to itself or to a unit of its own.",
            wrong.Message
        );
    }

    [Fact]
    public void Who_still_answers_for_something_is_not_removed_and_it_says_for_what()
    {
        var desk = PumpStation.Desk();
        Assert.Equal(
            "Ann Dorn cannot be removed, being person of 1 in elements (0); manager of 2 in accounts (1-MEC, 2-MEC). "
                + "Hand these over first.",
            Refused(desk, new RemovePersonCommand(desk.Person("ann"))).Message
        );
        Assert.Contains(
            "unit of 4 in elements",
            Refused(desk, new RemoveUnitCommand(desk.Unit("MEC"))).Message,
            StringComparison.Ordinal
        );
        desk.Edit(
            new HandOverCommand(desk.Person("ann"), desk.Person("bo"), InCharge: true),
            "Ann"
        );
        desk.Edit(new RemovePersonCommand(desk.Person("ann")), "Ann");
        Assert.Equal(-1, desk.Current[PersonTable.Definition].RowOfCode("ann"));
    }

    [Theory]
    [InlineData("", "The person has no name.")]
    [InlineData("   ", "The person has no name.")]
    public void A_person_has_a_name(string name, string message) =>
        Assert.Equal(message, Refused(PumpStation.Desk(), new AddPersonCommand(name)).Message);

    [Fact]
    public void A_code_that_somebody_has_is_refused()
    {
        var desk = PumpStation.Desk();
        Assert.Contains(
            "bo stands in people already",
            Refused(desk, new AddPersonCommand("Bob", Code: "bo")).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_person_in_charge_is_named_for_many_and_taken_back_to_the_one_above()
    {
        var desk = PumpStation.Desk();
        int[] halls = [desk.Id("1"), desk.Id("2")];
        desk.Edit(new NamePersonInChargeCommand(halls, desk.Person("bo")), "Ann");
        Assert.Equal("bo", desk.Cell(ElementTable.Person, halls[1]));
        desk.Edit(new NamePersonInChargeCommand(halls, 0), "Ann");
        Assert.Null(desk.Cell(ElementTable.Person, halls[1]));
    }

    [Fact]
    public void A_package_goes_from_offer_to_accepted_work_one_step_after_the_other()
    {
        var desk = PumpStation.Desk();
        int[] packages = [desk.Id("1.1"), desk.Id("1.2")];
        desk.Edit(new OfferPackagesCommand(packages, desk.Person("bo"), Day), "Ann");
        Assert.Equal(
            "1.1 Part 1.1 is offered; open for charging follows on accepted.",
            Refused(
                desk,
                new StepDelegationsCommand(packages, DelegationTable.IsOpen, Day)
            ).Message
        );
        for (var to = DelegationTable.IsAccepted; to <= DelegationTable.IsWorkAccepted; to++)
        {
            desk.Edit(new StepDelegationsCommand(packages, to, Day.AddDays(to)), "Bo");
        }

        var row = desk.Current[DelegationTable.Definition].Ids[0];
        Assert.Equal("work_accepted", desk.Cell(DelegationTable.State, row));
        Assert.Equal("2026-02-04", desk.Cell(DelegationTable.Opened, row));
    }

    [Fact]
    public void A_step_is_taken_back_for_a_reason_and_an_offer_is_withdrawn()
    {
        var desk = PumpStation.Desk();
        int[] packages = [desk.Id("1.1")];
        desk.Edit(new OfferPackagesCommand(packages, 0, Day), "Ann");
        desk.Edit(new StepDelegationsCommand(packages, DelegationTable.IsAccepted, Day), "Ann");
        Assert.Equal(
            "A step is taken back for a reason, and none is given.",
            Refused(desk, new StepDelegationsBackCommand(packages, " ", Day)).Message
        );
        desk.Edit(new StepDelegationsBackCommand(packages, "away until May", Day), "Ann");
        var row = desk.Current[DelegationTable.Definition].Ids[0];
        Assert.Equal(
            "2026-02-02 no longer accepted: away until May",
            desk.Cell(DelegationTable.Note, row)
        );
        Assert.Null(desk.Cell(DelegationTable.Accepted, row));
        desk.Edit(new StepDelegationsBackCommand(packages, "to somebody else", Day), "Ann");
        Assert.Equal(0, desk.Current[DelegationTable.Definition].Count);
        Assert.Equal(
            "1.1 Part 1.1 is not delegated. Offer it first.",
            Refused(
                desk,
                new StepDelegationsCommand(packages, DelegationTable.IsAccepted, Day)
            ).Message
        );
    }

    [Fact]
    public void A_step_before_the_one_before_it_is_refused()
    {
        var desk = PumpStation.Desk();
        int[] packages = [desk.Id("1.1")];
        desk.Edit(new OfferPackagesCommand(packages, 0, Day), "Ann");
        Assert.Contains(
            "accepted on 2026-02-01 lies before offered on 2026-02-02",
            Refused(
                desk,
                new StepDelegationsCommand(packages, DelegationTable.IsAccepted, Day.AddDays(-1))
            ).Message,
            StringComparison.Ordinal
        );
    }

    private static EditException Refused(EditDesk desk, EditCommand command)
    {
        var before = desk.Current;
        var wrong = Assert.Throws<EditException>(() => desk.Edit(command, "Ann"));
        Assert.Same(before, desk.Current);
        return wrong;
    }
}
