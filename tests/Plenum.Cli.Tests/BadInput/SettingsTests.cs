using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Settings of the project that are unknown or have a value that makes no sense.</summary>
public class SettingsTests
{
    [Fact]
    public void An_unknown_setting_is_refused_and_the_nearest_is_named() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            statusdate,2026-04-30
            """
        );

    [Fact]
    public void An_unknown_setting_like_none_is_refused_and_all_are_named() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            weather,fair
            """
        );

    [Fact]
    public void A_status_date_that_is_no_date_is_refused() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            status_date,end of April
            """
        );

    [Fact]
    public void An_unknown_currency_of_the_project_is_refused() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            currency,EURO
            """
        );

    [Fact]
    public void A_calendar_that_does_not_exist_is_refused() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            calendar,SITE
            """
        );

    [Fact]
    public void A_threshold_above_a_hundred_is_refused() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            variance_threshold,110
            """
        );

    [Fact]
    public void A_way_of_accruals_that_is_unknown_is_refused() =>
        Refusal.Of(
            """
            [project.csv]
            key,value
            accruals,reverse
            """
        );
}
