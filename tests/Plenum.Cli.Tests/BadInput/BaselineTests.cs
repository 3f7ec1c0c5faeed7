using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Plans that do not hold together.</summary>
public class BaselineTests
{
    [Fact]
    public void A_baseline_finish_before_its_start_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,start,finish
            PH.50,2026-06-19,2026-06-01
            """
        );

    [Fact]
    public void Milestones_that_all_weigh_nothing_are_refused() =>
        Refusal.Of(
            """
            [milestones.csv]
            package,milestone,weight
            PH.50,planted,0
            PH.50,watered,0
            """
        );

    [Fact]
    public void A_milestone_outside_the_baseline_dates_is_refused() =>
        Refusal.Of(
            """
            [milestones.csv]
            package,milestone,weight,planned
            PH.20.2,painted,10,2026-06-15
            """
        );

    [Fact]
    public void Apportioned_effort_that_follows_itself_in_a_ring_is_refused_and_shown_whole() =>
        Refusal.Of(
            """
            [packages.csv]
            package,technique,base
            PH.30.2,apportioned,PH.50
            PH.50,apportioned,PH.30.3
            """
        );

    [Fact]
    public void Apportioned_effort_without_a_base_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,technique
            PH.50,apportioned
            """
        );

    [Fact]
    public void Apportioned_effort_on_a_base_without_a_budget_is_refused() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent,name
            PH.60,PH,Fence
            [packages.csv]
            package,technique,base
            PH.50,apportioned,PH.60
            """
        );

    [Fact]
    public void A_base_for_work_that_is_not_apportioned_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,technique,base
            PH.50,percent,PH.40
            """
        );

    [Fact]
    public void Period_amounts_that_do_not_add_up_to_the_budget_are_refused() =>
        Refusal.Of(
            """
            [budget_periods.csv]
            package,period,amount
            PH.30.1,P2,33000.01
            """
        );

    [Fact]
    public void Period_amounts_of_a_cost_element_that_do_not_add_up_to_its_budget_are_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,spread
            PH.20.1,periods
            [budget_periods.csv]
            package,period,amount,cost_element
            PH.20.1,P2,20000,labour
            PH.20.1,P3,40000,material
            """
        );

    [Fact]
    public void Period_amounts_with_and_without_a_cost_element_are_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,spread
            PH.20.1,periods
            [budget_periods.csv]
            package,period,amount,cost_element
            PH.20.1,P2,24000,labour
            PH.20.1,P3,36000,
            """
        );

    [Fact]
    public void Spread_by_periods_without_period_amounts_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,spread
            PH.20.1,periods
            """
        );

    [Fact]
    public void Period_amounts_outside_the_baseline_dates_are_refused() =>
        Refusal.Of(
            """
            [budget_periods.csv]
            package,period,amount
            PH.30.1,P5,12000
            PH.30.1,P6,10000
            """
        );

    [Fact]
    public void Period_amounts_of_a_package_with_another_spread_are_refused() =>
        Refusal.Of(
            """
            [budget_periods.csv]
            package,period,amount
            PH.20.2,P4,70000
            """
        );

    [Fact]
    public void An_account_that_stands_elsewhere_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,account
            PH.20.1,CA30
            """
        );

    [Fact]
    public void A_link_that_leads_back_to_its_own_activity_is_refused() =>
        Refusal.Of(
            """
            [links.csv]
            from,to
            A10,A10
            """
        );

    [Fact]
    public void A_link_to_a_package_as_a_whole_that_has_activities_is_refused() =>
        Refusal.Of(
            """
            [links.csv]
            from,to
            PH.10.1,PH.20.1
            """
        );

    [Fact]
    public void A_link_to_an_unknown_activity_is_refused() =>
        Refusal.Of(
            """
            [links.csv]
            from,to
            A10,A99
            """
        );

    [Fact]
    public void A_posting_from_an_account_to_itself_is_refused() =>
        Refusal.Of(
            """
            [postings.csv]
            change,posting,from,to,amount
            C0,7,reserve,reserve,100
            """
        );
}
