using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Activities and links of which no network can be made, or only one that makes no sense.</summary>
public class NetworkTests
{
    [Fact]
    public void A_ring_of_links_is_refused_and_shown_whole() =>
        Refusal.Of(
            """
            [links.csv]
            from,to,type
            PH.20.1,PH.30.1,FS
            PH.30.1,A10,SS
            """
        );

    [Fact]
    public void Two_rings_of_links_are_refused_and_each_is_shown() =>
        Refusal.Of(
            """
            [links.csv]
            from,to,type
            PH.20.1,A10,FS
            PH.30.1,PH.30.2,FS
            PH.30.2,PH.30.1,FF
            """
        );

    [Fact]
    public void A_link_that_stands_twice_is_refused() =>
        Refusal.Of(
            """
            [links.csv]
            from,to,type,lag
            PH.20.1,PH.20.2,,3
            PH.20.1,PH.20.2,FS,5
            """
        );

    [Fact]
    public void A_link_of_an_unknown_type_is_refused() =>
        Refusal.Of(
            """
            [links.csv]
            from,to,type
            PH.20.1,PH.20.2,FX
            """
        );

    [Fact]
    public void A_calendar_without_a_working_day_is_refused() =>
        Refusal.Of(
            """
            [calendars.csv]
            calendar,working
            idle,0000000
            """
        );

    [Fact]
    public void A_lag_beyond_the_end_of_its_calendar_is_refused() =>
        Refusal.Of(
            """
            [calendars.csv]
            calendar,working
            tide,0000000
            [calendar_days.csv]
            calendar,date,working
            tide,2026-06-01,1
            tide,2026-06-15,1
            tide,2026-06-29,1
            [activities.csv]
            activity,package,duration,calendar
            A40,PH.40,1,tide
            A41,PH.40,1,
            [links.csv]
            from,to,lag
            A40,A41,3
            """
        );

    [Fact]
    public void Work_beyond_the_end_of_its_calendar_is_refused() =>
        Refusal.Of(
            """
            [calendars.csv]
            calendar,working
            tide,0000000
            [calendar_days.csv]
            calendar,date,working
            tide,2026-06-01,1
            tide,2026-06-15,1
            [activities.csv]
            activity,package,duration,calendar
            A40,PH.40,3,tide
            """
        );

    [Fact]
    public void An_on_date_on_a_holiday_is_refused() =>
        Refusal.Of(
            """
            [calendars.csv]
            calendar,working
            site,1111100
            [calendar_days.csv]
            calendar,date,working,note
            site,2026-05-01,0,May Day
            [activities.csv]
            activity,package,duration,calendar,start_on,finish_on
            A40,PH.40,5,site,2026-05-01,
            A41,PH.40,5,site,,2026-05-03
            """
        );

    [Fact]
    public void Conditions_that_contradict_each_other_are_refused() =>
        Refusal.Of(
            """
            [activities.csv]
            activity,package,duration,start_no_earlier,start_no_later,finish_no_earlier,finish_no_later,start_on
            A40,PH.40,5,2026-05-11,2026-05-04,,,
            A41,PH.40,5,,,2026-06-12,2026-06-05,
            A42,PH.40,5,2026-05-11,,,2026-05-08,
            A43,PH.40,5,2026-05-11,,,,2026-05-04
            """
        );

    [Fact]
    public void On_dates_that_do_not_fit_the_duration_are_refused() =>
        Refusal.Of(
            """
            [activities.csv]
            activity,package,duration,start_on,finish_on
            A40,PH.40,5,2026-05-04,2026-05-11
            """
        );

    [Fact]
    public void A_date_that_is_required_before_the_project_starts_is_refused() =>
        Refusal.Of(
            """
            [activities.csv]
            activity,package,duration,required_by
            A40,PH.40,5,2025-12-19
            """
        );

    [Fact]
    public void Remaining_work_of_a_finished_activity_is_refused() =>
        Refusal.Of(
            """
            [activity_status.csv]
            activity,period,started,finished,remaining
            A10,P4,2026-04-01,2026-04-07,3
            """
        );

    [Fact]
    public void An_activity_finished_without_having_started_is_refused() =>
        Refusal.Of(
            """
            [activity_status.csv]
            activity,period,finished
            A10,P4,2026-04-07
            """
        );

    [Fact]
    public void A_negative_duration_is_refused() =>
        Refusal.Of(
            """
            [activities.csv]
            activity,package,duration
            A40,PH.40,-1
            """
        );
}
