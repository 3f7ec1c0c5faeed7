using Plenum.Core.Baseline;
using Plenum.Core.Status;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.People;

namespace Plenum.Workbench.Tests.Commands.People;

/// <summary>
/// Control accounts placed, merged, divided, handed over. An account is one element by one organisation and contains no
/// other: GAO-16-89G App. III, SAE EIA-748 guideline 5. What happens to codes and charges is a definition of our own.
/// </summary>
public sealed class AccountCommandTests
{
    [Fact]
    public void A_placed_account_gets_a_code_like_the_others_and_the_packages_of_its_unit()
    {
        var desk = PumpStation.Desk(text =>
        {
            text.Add("units", ("unit", "ELE"), ("name", "Electrical"), ("parent", "ENG"));
            text.Add(
                "elements",
                ("code", "1.4"),
                ("parent", "1"),
                ("name", "Cables"),
                ("unit", "ELE")
            );
        });
        var answer = desk.Edit(
            new PlaceAccountCommand(desk.Id("1"), desk.Unit("ELE"), desk.Person("bo")),
            "Ann"
        );
        Assert.Equal("place an account on 1 Hall 1 for Electrical", answer.Words);
        Assert.Contains("1-ELE on 1 by bo: 1.4", desk.Accounts());
    }

    [Fact]
    public void One_element_and_one_unit_meet_in_one_account()
    {
        var desk = PumpStation.Desk();
        Refused(
            desk,
            new PlaceAccountCommand(desk.Id("1"), desk.Unit("MEC"), desk.Person("bo")),
            "1-MEC stands at this crossing already"
        );
    }

    [Fact]
    public void An_account_contains_no_other_unless_it_is_asked_for_and_then_the_audit_says_so()
    {
        var desk = PumpStation.Desk();
        var command = new PlaceAccountCommand(desk.Id("0"), desk.Unit("MEC"), desk.Person("ann"));
        Refused(desk, command, "1-MEC stands below 0 Pumping station");
        desk.Edit(command with { Anyway = true }, "Ann");
        Assert.Contains(
            new Core.People.Audit.AccountOverlapRule(
                desk.Current.Tree,
                desk.Current.Placement
            ).Run(),
            finding =>
                finding.Message.Contains("lies below account 0-MEC", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Merged_accounts_stand_on_the_element_that_both_have_in_common()
    {
        var desk = PumpStation.Desk();
        Refused(
            desk,
            new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("2-MEC")),
            "stands below 0 Pumping station"
        );
        desk.Edit(new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")), "Ann");
        desk.Edit(new MergeAccountsCommand(desk.Account("2-MEC"), desk.Account("2-PIP")), "Ann");
        desk.Edit(new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("2-MEC")), "Ann");
        Assert.Equal(["1-MEC on 0 by ann: 1.1 1.2 1.3 2.1 2.2 2.3"], desk.Accounts());
    }

    [Fact]
    public void What_was_posted_goes_along_when_accounts_are_merged()
    {
        var desk = PumpStation.Desk(text =>
        {
            text.Add("changes", ("change", "C0"), ("title", "Contract"));
            text.Add(
                "postings",
                ("change", "C0"),
                ("posting", "1"),
                ("from", "undistributed"),
                ("to", "1-PIP"),
                ("amount", "1002.37")
            );
        });
        desk.Edit(new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")), "Ann");
        Assert.Equal(
            1002_37,
            BudgetLedger.Distributed(
                desk.Current[PostingTable.Definition],
                desk.Current.Placement.Accounts
            )[0]
        );
    }

    [Fact]
    public void What_was_charged_in_a_closed_period_stays_so_that_account_is_the_one_that_stays()
    {
        var desk = Charged("P1");
        Refused(
            desk,
            new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")),
            "Merge 1-MEC into 1-PIP instead."
        );
        desk.Edit(new MergeAccountsCommand(desk.Account("1-PIP"), desk.Account("1-MEC")), "Ann");
        Assert.Contains("1-PIP on 1 by bo: 1.1 1.2 1.3", desk.Accounts());
    }

    [Fact]
    public void What_was_charged_in_an_open_period_follows()
    {
        var desk = Charged("P2");
        desk.Edit(new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")), "Ann");
        var ledger = desk.Current[ActualTable.Definition];
        Assert.Equal("1-MEC", desk.Cell(ActualTable.Charge, ledger.Ids[0]));
    }

    [Fact]
    public void An_account_is_not_merged_with_one_that_a_posting_lies_between()
    {
        var desk = PumpStation.Desk(text =>
        {
            text.Add("changes", ("change", "C1"));
            text.Add(
                "postings",
                ("change", "C1"),
                ("posting", "1"),
                ("from", "1-MEC"),
                ("to", "1-PIP"),
                ("amount", "5")
            );
        });
        Refused(
            desk,
            new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")),
            "from an account to itself"
        );
    }

    [Fact]
    public void An_account_is_divided_by_the_parts_of_its_element()
    {
        var desk = PumpStation.Desk();
        desk.Edit(
            new DivideAccountCommand(desk.Account("1-MEC"), DivideBy.Children, Anyway: true),
            "Ann"
        );
        Assert.Contains("1.1-MEC on 1.1 by ann: 1.1", desk.Accounts());
        Assert.Contains("1.3-MEC on 1.3 by ann: 1.3", desk.Accounts());
        Assert.Contains("1-PIP on 1 by bo: 1.2", desk.Accounts());
    }

    [Fact]
    public void An_account_is_divided_by_unit_as_its_packages_say()
    {
        var desk = PumpStation.Desk();
        desk.Edit(new MergeAccountsCommand(desk.Account("1-MEC"), desk.Account("1-PIP")), "Ann");
        desk.Edit(new DivideAccountCommand(desk.Account("1-MEC"), DivideBy.Unit), "Ann");
        Assert.Contains("1-MEC on 1 by ann: 1.1 1.3", desk.Accounts());
        Assert.Contains("1-PIP on 1 by ann: 1.2", desk.Accounts());
        Refused(
            desk,
            new DivideAccountCommand(desk.Account("1-PIP"), DivideBy.Unit),
            "All its packages belong to one unit."
        );
    }

    [Fact]
    public void Dividing_posted_budget_needs_a_change_request_that_posts_it_on_to_the_cent()
    {
        var desk = PumpStation.Desk(text =>
        {
            text.Add("changes", ("change", "C0"), ("title", "Contract"));
            text.Add("changes", ("change", "C7"), ("title", "Two managers"));
            text.Add(
                "postings",
                ("change", "C0"),
                ("posting", "1"),
                ("from", "undistributed"),
                ("to", "1-MEC"),
                ("amount", "2004.74")
            );
        });
        var command = new DivideAccountCommand(
            desk.Account("1-MEC"),
            DivideBy.Children,
            Anyway: true
        );
        Refused(desk, command, "Name the change request");
        Refused(desk, command with { Change = "C9" }, "No change request has the number \"C9\"");
        desk.Edit(command with { Change = "C7" }, "Ann");
        var accounts = desk.Current.Placement.Accounts;
        var distributed = BudgetLedger.Distributed(desk.Current[PostingTable.Definition], accounts);
        Assert.Equal(1001_37, distributed[accounts.RowOf(desk.Account("1-MEC"))]);
        Assert.Equal(1003_37, distributed[accounts.RowOf(desk.Account("1.3-MEC"))]);
    }

    [Fact]
    public void Dividing_an_account_with_cost_of_its_own_needs_the_part_that_keeps_it()
    {
        var desk = Charged("P1", "1-MEC");
        var command = new DivideAccountCommand(
            desk.Account("1-MEC"),
            DivideBy.Children,
            Anyway: true
        );
        Refused(desk, command, "Name the part that keeps it: 1.1, 1.3.");
        desk.Edit(command with { Keeps = desk.Id("1.3") }, "Ann");
        Assert.Contains("1-MEC on 1.3 by ann: 1.3", desk.Accounts());
        Assert.Contains("1.1-MEC on 1.1 by ann: 1.1", desk.Accounts());
    }

    [Fact]
    public void An_account_that_something_is_charged_to_is_not_taken_away()
    {
        var desk = Charged("P2");
        Refused(
            desk,
            new RemoveAccountCommand(desk.Account("1-PIP")),
            "1-PIP cannot be taken away: cost is charged to it (D1, 1). Merge it into another account instead."
        );
        desk.Edit(new RemoveAccountCommand(desk.Account("2-PIP")), "Ann");
        Assert.Contains("2-MEC on 2 by ann: 2.1 2.2 2.3", desk.Accounts());
    }

    [Fact]
    public void An_account_is_not_moved_away_from_its_packages()
    {
        var desk = PumpStation.Desk();
        Refused(
            desk,
            new MoveAccountCommand(desk.Account("1-MEC"), desk.Id("2"), desk.Unit("MEC")),
            "Divide the account first."
        );
    }

    [Fact]
    public void Packages_name_an_account_that_stands_above_them()
    {
        var desk = PumpStation.Desk();
        Refused(
            desk,
            new NameAccountCommand([desk.Id("1.1")], desk.Account("2-MEC")),
            "2-MEC does not stand above 1.1 Part 1.1."
        );
        Refused(
            desk,
            new NameAccountCommand([desk.Id("1")], desk.Account("1-MEC")),
            "1 Hall 1 is no package"
        );
        desk.Edit(new NameAccountCommand([desk.Id("1.1")], desk.Account("1-PIP")), "Ann");
        Assert.Contains("1-PIP on 1 by bo: 1.1 1.2", desk.Accounts());
    }

    [Fact]
    public void All_accounts_of_a_person_are_handed_over_in_one_step()
    {
        var desk = PumpStation.Desk();
        desk.Edit(
            new HandOverCommand(desk.Person("ann"), desk.Person("bo"), InCharge: true),
            "Ann"
        );
        Assert.All(
            desk.Accounts(),
            line => Assert.Contains(" by bo:", line, StringComparison.Ordinal)
        );
        Assert.Equal("bo", desk.Cell(Core.Breakdown.ElementTable.Person, desk.Id("0")));
        desk.Undo("Ann");
        Assert.Contains("1-MEC on 1 by ann: 1.1 1.3", desk.Accounts());
    }

    [Fact]
    public void Who_names_a_manager_second_sees_both_names()
    {
        var desk = PumpStation.Desk();
        var (ann, bo) = (desk.Person("ann"), desk.Person("bo"));
        desk.Edit(new AddPersonCommand("Cy Lund"), "Ann");
        desk.Edit(new NameManagerCommand([desk.Account("1-MEC")], bo, ann), "Ann");
        var both = Assert.Throws<EditConflictException>(() =>
            desk.Edit(
                new NameManagerCommand([desk.Account("1-MEC")], desk.Person("c.lund"), ann),
                "Bo"
            )
        );
        Assert.Equal(
            "Ann has changed manager of 1-MEC to \"bo\"; you wrote \"c.lund\".",
            both.Message
        );
    }

    private static EditDesk Charged(string period, string account = "1-PIP") =>
        PumpStation.Desk(text =>
            text.Add(
                "actuals",
                ("document", "D1"),
                ("line", "1"),
                ("charge", account),
                ("period", period),
                ("cost_element", "labour"),
                ("amount", "12.34")
            )
        );

    private static void Refused(EditDesk desk, EditCommand command, string because)
    {
        var before = desk.Current;
        var wrong = Assert.Throws<EditException>(() => desk.Edit(command, "Ann"));
        Assert.Contains(because, wrong.Message, StringComparison.Ordinal);
        Assert.All(wrong.Faults, fault => Assert.NotEmpty(fault.Expected));
        Assert.Same(before, desk.Current);
    }
}
