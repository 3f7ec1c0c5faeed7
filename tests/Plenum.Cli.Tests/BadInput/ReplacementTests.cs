using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Replacement that would remove what is still needed.</summary>
public class ReplacementTests
{
    [Fact]
    public void A_person_who_is_still_in_charge_is_not_removed() =>
        Refusal.Of(
            """
            [people.csv]
            person,name,unit
            ann,Ann Birch,OWN
            bo,Bo Larch,CIV
            """,
            "--replace"
        );

    [Fact]
    public void A_period_that_is_still_planned_in_is_not_removed() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P1,2026-01-31
            P2,2026-02-28
            P3,2026-03-31
            P4,2026-04-30
            P6,2026-06-30
            """,
            "--replace"
        );

    [Fact]
    public void A_closed_period_is_not_removed() =>
        Refusal.Of(
            """
            [periods.csv]
            period,end
            P1,2026-01-31
            P3,2026-03-31
            P4,2026-04-30
            P5,2026-05-31
            P6,2026-06-30
            """,
            "--replace"
        );

    [Fact]
    public void A_row_of_a_closed_period_is_not_removed() =>
        Refusal.Of(
            """
            [milestone_status.csv]
            package,milestone,period,done
            PH.20.2,walls,P4,2026-04-17
            """,
            "--replace"
        );

    [Fact]
    public void A_milestone_that_was_reached_is_not_removed() =>
        Refusal.Of(
            """
            [milestones.csv]
            package,milestone,weight,planned
            PH.20.2,walls,60,2026-04-17
            PH.20.2,roof,40,2026-05-29
            PH.30.1,tested,80,2026-04-24
            PH.30.1,delivered,20,2026-05-15
            """,
            "--replace"
        );
}
