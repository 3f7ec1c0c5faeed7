namespace Plenum.Browser.Tests;

/// <summary>Parts and activities, part types and work sets: read and written by keyboard alone.</summary>
public sealed class PartsTests(Site site)
{
    [Fact]
    public async Task A_missing_cell_is_planned_taken_back_ruled_out_and_cleared()
    {
        await using var reader = await Reader.At(site, "/p/parts/breakdown/parts?focus=03.2");
        await Cell(reader, down: 3, right: 4);
        await reader.By("#cell-title", "Factory test of High-pressure pump").WaitForAsync();
        Assert.Equal(2, await Missing(reader));

        await reader.Press("p");
        await MissingIs(reader, 1);
        await reader.By("td.active.planned").WaitForAsync();
        await reader.Press("Control+z");
        await MissingIs(reader, 2);

        await reader.Press("x");
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'reason'");
        await reader.Type("tested on site");
        await reader.Press("Enter");
        await reader.By("td.active.ruledout", "tested on site").WaitForAsync();
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'parts'");

        await reader.Press("Delete");
        await reader.By("td.active.absent").WaitForAsync();
        await MissingIs(reader, 2);
    }

    [Fact]
    public async Task Hours_are_typed_into_a_missing_cell_and_what_is_no_number_comes_back()
    {
        await using var reader = await Reader.At(site, "/p/parts/breakdown/parts?focus=03.2");
        await Cell(reader, down: 4, right: 11);
        await reader.By("#cell-title", "Hand-over of Pump motor and drive").WaitForAsync();
        var cell = await reader.Page.EvaluateAsync<string>(
            "() => document.querySelector('#parts td.active').id"
        );
        await reader.Type("1e");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "\"1e\" found").WaitForAsync();
        await reader.Press("Backspace");
        await reader.Type("6");
        await reader.Press("Enter");
        await reader.By($"#{cell}.planned", "16").WaitForAsync();
        await reader.Press("Control+z");
        await reader.By($"#{cell}.absent").WaitForAsync();
    }

    [Fact]
    public async Task What_has_dates_is_not_cleared_and_the_sheet_says_why()
    {
        await using var reader = await Reader.At(site, "/p/parts/breakdown/parts?focus=03.1");
        await Cell(reader, down: 0, right: 0);
        await reader.By("#cell-title", "Design of Membrane racks").WaitForAsync();
        await reader.Press("Delete");
        await reader.By("#edit-trouble", "has baseline dates and stays").WaitForAsync();
        await reader.By("td.active.planned").WaitForAsync();
    }

    [Fact]
    public async Task The_question_to_the_person_in_charge_is_written_and_copied()
    {
        await using var reader = await Reader.At(site, "/p/parts/breakdown/parts?focus=03.2");
        await Cell(reader, down: 4, right: 11);
        await reader.By("#cell-title", "Hand-over of Pump motor and drive").WaitForAsync();
        await reader.Press("a");
        await reader.By("#question", "has no hand-over").WaitForAsync();
        Assert.Equal(
            await reader.Text("#question"),
            await reader.Page.EvaluateAsync<string>("() => navigator.clipboard.readText()")
        );
    }

    [Fact]
    public async Task A_work_set_is_written_given_to_parts_and_applied_without_a_pointer()
    {
        await using var reader = await Reader.At(site, "/p/parts/breakdown/sets");
        await reader.By("#new-type").FocusAsync();
        await reader.Type("Skid");
        await reader.Press("Enter");
        await reader.By("#set-title", "Work set of Skid").WaitForAsync();
        await reader.By("#new-activity").FocusAsync();
        await reader.Type("Shop assembly");
        await reader.Press("Enter");
        await reader.By("#set td", "Shop assembly").WaitForAsync();

        await reader.By("#set").FocusAsync();
        await reader.Press("ArrowRight");
        await reader.Press("ArrowRight");
        await reader.Type("all of it");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "share: \"all of it\" found").WaitForAsync();
        await reader.Press("Control+a");
        await reader.Type("100");
        await reader.Press("Enter");
        await reader.By("#set td", "100").WaitForAsync();

        await reader.Go("/p/parts/breakdown/parts?focus=03.5");
        await Cell(reader, down: 8, right: 0);
        await reader.Press("Shift+ArrowDown");
        await reader.Press("t");
        await reader.By("#find-type").WaitForAsync();
        await reader.Page.WaitForFunctionAsync("() => document.activeElement.id === 'find-type'");
        await reader.Type("skid");
        await reader.Press("Enter");
        await reader.By("#parts thead .activity", "Shop assembly").WaitForAsync();
        await reader.By("#parts .sum", "0 of 1").WaitForAsync();
        await reader.Press("w");
        await reader.By("#parts .sum", "1 of 1").WaitForAsync();
        Assert.Equal(
            2,
            await reader.By("#parts tbody .sum").Filter(new() { HasText = "1 of 1" }).CountAsync()
        );

        await reader.Press("Control+z");
        await reader.By("#parts .sum", "0 of 1").WaitForAsync();
        await reader.Press("Control+z");
        await reader.By("#parts .sum", "of 12").WaitForAsync();
    }

    [Theory]
    [InlineData("breakdown/parts?focus=03.2")]
    [InlineData("breakdown/sets")]
    [InlineData("estimate?focus=03.2")]
    public async Task Nothing_of_the_sheet_is_cut_off_at_1280(string sheet)
    {
        await using var reader = await Reader.At(
            site,
            $"/p/plant/{sheet}",
            width: 1280,
            height: 800
        );
        await reader.By("table[role=grid]").WaitForAsync();
        Assert.True(
            await reader.Page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= innerWidth && [...document.querySelectorAll('.reading, .partbar')].every(part => part.scrollWidth <= part.clientWidth + 1)"
            )
        );
    }

    private static async Task Cell(Reader reader, int down, int right)
    {
        await reader.By("#parts td.active").WaitForAsync();
        await reader.By("#parts").FocusAsync();
        for (var step = 0; step < down; step++)
        {
            await reader.Press("ArrowDown");
        }

        for (var step = 0; step < right; step++)
        {
            await reader.Press("ArrowRight");
        }
    }

    private static async Task<int> Missing(Reader reader) =>
        int.Parse(
            await reader.Text("#parts tfoot .sum"),
            System.Globalization.CultureInfo.InvariantCulture
        );

    private static Task MissingIs(Reader reader, int count) =>
        reader.Page.WaitForFunctionAsync(
            "count => document.querySelector('#parts tfoot .sum').innerText === String(count)",
            count
        );
}
