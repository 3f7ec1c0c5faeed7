using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Rows that the ledger of actual cost, the currency or a closed period does not let in.</summary>
public class LedgerTests
{
    [Fact]
    public void A_ledger_row_that_is_charged_to_nobody_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount
            I-99,1,PH.99,P4,labour,100
            """
        );

    [Fact]
    public void A_ledger_row_that_is_charged_to_a_branch_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount
            I-99,1,PH.30,P4,labour,100
            """
        );

    [Fact]
    public void A_known_document_line_with_other_content_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount
            O-X,1,PH.40,P4,labour,5
            T-03,3,PH.40,P3,labour,3200
            """
        );

    [Fact]
    public void A_foreign_currency_without_a_rate_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount,currency,rate
            I-99,1,PH.30.1,P4,material,100,USD,
            """
        );

    [Fact]
    public void A_rate_beside_the_projects_own_currency_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount,currency,rate
            I-99,1,PH.30.1,P4,material,100,EUR,1.2
            """
        );

    [Fact]
    public void An_unknown_currency_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount,currency,rate
            I-99,1,PH.30.1,P4,material,100,EUX,1.2
            """
        );

    [Fact]
    public void A_rate_that_takes_the_amount_out_of_range_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount,currency,rate
            I-99,1,PH.30.1,P4,material,9999999999999,USD,1000000
            """
        );

    [Fact]
    public void A_change_to_a_row_of_a_closed_period_is_refused() =>
        Refusal.Of(
            """
            [status.csv]
            package,period,units_done
            PH.20.1,P3,90
            """
        );

    [Fact]
    public void A_new_row_in_a_closed_period_is_refused() =>
        Refusal.Of(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount
            I-99,1,PH.30.1,P2,material,100
            """
        );

    [Fact]
    public void A_closed_period_that_moves_is_refused() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P2,2026-02-27
            """
        );

    [Fact]
    public void A_new_period_among_the_closed_is_refused() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P2a,2026-02-14
            """
        );

    [Fact]
    public void Two_periods_that_end_on_the_same_day_are_refused() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P7,2026-06-30
            """
        );

    [Fact]
    public void The_currency_does_not_change_while_there_are_amounts() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            currency,USD
            """
        );

    [Fact]
    public void A_known_document_line_with_the_same_content_changes_nothing()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        terminal.Write(
            """
            [actuals.csv]
            document,line,charge,period,cost_element,amount
            T-03,3,PH.40,P3,labour,3100.00
            """
        );
        var reply = terminal.Tell("import", PumpHouse.File, "actuals.csv");
        Assert.Equal(ExitCode.Done, reply.Status);
        Approved.Is(
            nameof(A_known_document_line_with_the_same_content_changes_nothing),
            terminal.Story
        );
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
    }

    [Fact]
    public void A_period_that_ends_before_the_project_starts_is_refused()
    {
        using var terminal = PumpHouse.Empty(("start", "2026-01-01"));
        var files = terminal.Write(
            """
            [periods.csv]
            period,end
            P0,2025-12-31
            P1,2026-01-31
            """
        );
        Refusal.OfImport(terminal, files);
    }
}
