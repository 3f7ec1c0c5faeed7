using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Cells that do not hold what their column expects.</summary>
public class CellTests
{
    [Fact]
    public void The_thirtieth_of_February_is_refused() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P7,2026-02-30
            """
        );

    [Fact]
    public void A_date_in_another_order_is_refused() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P7,31.07.2026
            """
        );

    [Fact]
    public void A_decimal_comma_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package;cost_element;amount
            PH.50;labour;1,5
            """
        );

    [Fact]
    public void An_amount_with_thousands_marks_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,"1,000.00"
            """
        );

    [Fact]
    public void An_amount_with_an_exponent_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,1e3
            """
        );

    [Fact]
    public void An_amount_that_is_two_hyphens_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,--
            """
        );

    [Fact]
    public void An_amount_of_a_hundred_thousand_million_million_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,100000000000000000
            """
        );

    [Fact]
    public void Three_decimals_in_euro_are_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,12.345
            """
        );

    [Fact]
    public void A_negative_budget_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,-100
            """
        );

    [Fact]
    public void An_amount_with_its_currency_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,EUR 100
            """
        );

    [Fact]
    public void An_amount_that_is_not_a_number_is_refused() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,NaN
            """
        );

    [Fact]
    public void A_percentage_above_a_hundred_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P4,101
            """
        );

    [Fact]
    public void A_percentage_below_zero_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P4,-1
            """
        );

    [Fact]
    public void A_percentage_with_three_decimals_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P4,12.345
            """
        );

    [Fact]
    public void A_percentage_with_its_sign_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,percent
            PH.30.2,P4,12%
            """
        );

    [Fact]
    public void A_technique_that_does_not_add_up_to_a_hundred_is_refused() =>
        Refusal.Of(
            """
            [packages.csv]
            package,technique
            PH.50,30/60
            """
        );

    [Fact]
    public void A_calendar_of_six_days_a_week_is_refused() =>
        Refusal.Of(
            """
            [calendars.csv]
            calendar,working
            SITE,111111
            """
        );

    [Fact]
    public void A_long_value_is_cut_in_the_message() =>
        Refusal.Of(
            """
            [budget.csv]
            package,cost_element,amount
            PH.50,labour,xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx
            """
        );

    [Fact]
    public void Decimals_in_yen_are_refused()
    {
        using var terminal = PumpHouse.Empty(("currency", "JPY"));
        var files = terminal.Write(
            """
            [elements.csv]
            code,parent,name
            QR,,Quarry road
            QR.1,QR,Survey
            [budget.csv]
            package,cost_element,amount
            QR.1,labour,100.5
            """
        );
        Refusal.OfImport(terminal, files);
    }
}
