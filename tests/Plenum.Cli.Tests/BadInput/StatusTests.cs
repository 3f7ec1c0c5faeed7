using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Reported status that cannot be.</summary>
public class StatusTests
{
    [Fact]
    public void Status_of_an_unknown_package_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.9,P4,10
            """
        );

    [Fact]
    public void Status_in_an_unknown_period_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P9,10
            """
        );

    [Fact]
    public void Status_of_a_branch_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30,P4,10
            """
        );

    [Fact]
    public void An_actual_date_after_the_end_of_its_period_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,started
            PH.30.2,P4,2026-05-04
            """
        );

    [Fact]
    public void An_actual_finish_before_the_actual_start_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,started,finished
            PH.30.2,P4,2026-04-20,2026-04-07
            """
        );

    [Fact]
    public void An_actual_finish_before_a_start_that_an_earlier_period_gave_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,finished
            PH.20.2,P4,2026-03-02
            """
        );

    [Fact]
    public void An_actual_finish_without_an_actual_start_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,finished
            PH.30.2,P4,2026-04-07
            """
        );

    [Fact]
    public void An_actual_start_that_is_taken_back_under_a_finish_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,started
            PH.10.2,P4,-
            """
        );

    [Fact]
    public void Units_done_without_a_quantity_are_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,units_done
            PH.50,P4,10
            """
        );

    [Fact]
    public void An_unknown_milestone_that_is_done_is_refused() =>
        Refusal.Of(
            """
            [milestone_status.csv]
            package,milestone,period,done
            PH.20.2,floor,P4,2026-04-10
            """
        );

    [Fact]
    public void A_milestone_that_is_done_after_its_period_is_refused() =>
        Refusal.Of(
            """
            [milestone_status.csv]
            package,milestone,period,done
            PH.20.2,walls,P4,2026-05-10
            """
        );

    [Fact]
    public void An_activity_finished_before_it_started_is_refused() =>
        Refusal.Of(
            """
            [activity_status.csv]
            activity,period,started,finished
            A10,P4,2026-04-20,2026-04-07
            """
        );

    [Fact]
    public void Steps_of_credit_that_do_not_add_up_to_a_hundred_are_refused() =>
        Refusal.Of(
            """
            [credit_steps.csv]
            rule,step,percent
            drawing,as_built,10
            welding,fitted,60
            welding,welded,39.99
            """
        );

    [Fact]
    public void An_item_with_an_unknown_rule_of_credit_is_refused() =>
        Refusal.Of(
            """
            [items.csv]
            package,item,rule
            PH.10.1,D-004,sketch
            """
        );

    [Fact]
    public void A_step_that_is_not_in_the_items_rule_is_refused() =>
        Refusal.Of(
            """
            [item_steps.csv]
            item,package,step,period
            D-002,PH.10.1,printed,P4
            """
        );

    [Fact]
    public void A_step_of_an_unknown_item_is_refused() =>
        Refusal.Of(
            """
            [item_steps.csv]
            item,package,step,period
            D-009,PH.10.1,drawn,P4
            """
        );

    [Fact]
    public void A_quantity_done_of_an_item_without_a_quantity_is_refused() =>
        Refusal.Of(
            """
            [item_steps.csv]
            item,package,step,period,quantity
            D-003,PH.10.1,approved,P4,2
            """
        );
}
