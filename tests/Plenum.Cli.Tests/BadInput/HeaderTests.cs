using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Files whose name or header row is not right.</summary>
public class HeaderTests
{
    [Fact]
    public void An_empty_file_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            """
        );

    [Fact]
    public void A_header_row_without_headings_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            ,,
            ann,Ann Birch,OWN
            """
        );

    [Fact]
    public void A_column_without_a_heading_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,,unit
            ann,Ann Birch,OWN
            """
        );

    [Fact]
    public void A_heading_that_stands_twice_is_refused() =>
        Refusal.Of(
            """
            [people.csv]
            person,name,Name
            ann,Ann,Birch
            """
        );

    [Fact]
    public void An_unknown_column_is_refused_and_the_nearest_is_named() =>
        Refusal.Of(
            """
            [people.csv]
            person,nane,unit
            ann,Ann Birch,OWN
            """
        );

    [Fact]
    public void An_unknown_column_like_none_is_refused_and_all_are_named() =>
        Refusal.Of(
            """
            [people.csv]
            person,shoe_size
            ann,41
            """
        );

    [Fact]
    public void A_missing_column_is_refused_and_all_that_are_needed_are_named() =>
        Refusal.Of(
            """
            [elements.csv]
            code,parent
            PH.60,PH
            """
        );

    [Fact]
    public void An_unknown_table_is_refused_and_the_nearest_is_named() =>
        Refusal.Of(
            """
            [budgets.csv]
            package,cost_element,amount
            PH.50,labour,1
            """
        );

    [Fact]
    public void An_unknown_table_like_none_is_refused() =>
        Refusal.Of(
            """
            [weather.csv]
            day,rain
            1,2
            """
        );

    [Fact]
    public void Several_files_are_refused_for_all_that_is_wrong_with_each() =>
        Refusal.Of(
            """
            [people.csv]
            person,nane
            dee,Dee Ash
            [budgets.csv]
            package,cost_element,amount
            PH.50,labour,1
            [status.csv]
            package,period,percent
            PH.30.2,P4,1e3
            PH.30.9,P4,5
            """
        );
}
