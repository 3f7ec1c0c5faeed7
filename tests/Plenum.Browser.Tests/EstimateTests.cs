namespace Plenum.Browser.Tests;

/// <summary>The Estimate sheet: lines written by keyboard, rows pasted, and the step to the budget.</summary>
public sealed class EstimateTests(Site site)
{
    [Fact]
    public async Task A_cell_is_written_refused_and_mended_and_taken_back()
    {
        await using var reader = await Reader.At(site, "/p/parts/estimate?focus=03.2.04.1");
        await Grid(reader, right: 2);
        var before = await reader.Text("#lines-0-2");
        await reader.Type("4x");
        await reader.Press("Enter");
        await reader.By("#edit-trouble", "quantity: \"4x\" found").WaitForAsync();
        await reader.Press("Backspace");
        await reader.Press("Tab");
        await reader.By("#lines-0-2", "4").WaitForAsync();
        await reader.By("#lines-0-3.active").WaitForAsync();
        await reader.Press("Control+z");
        await reader.By("#lines-0-2", before).WaitForAsync();
    }

    [Fact]
    public async Task Rows_of_a_spreadsheet_become_lines_and_lines_become_a_budget()
    {
        await using var reader = await Reader.At(site, "/p/parts/estimate?focus=03.4.04.1");
        await Grid(reader, right: 0);
        await reader.Page.EvaluateAsync(
            "() => navigator.clipboard.writeText('labour\\t1\\t10\\tdays\\t8\\t50\\nmaterial\\t1\\t3\\tpieces\\t\\t12.5\\nother\\t9\\t2\\tlots\\t\\t7')"
        );
        var lines = await reader.By("#lines tbody tr[data-row]").CountAsync();
        await reader.Press("Control+v");
        await reader.By("#lines td", "lots").WaitForAsync();
        Assert.True(await reader.By("#lines tbody tr[data-row]").CountAsync() >= lines);

        await reader.By("#look").FocusAsync();
        await reader.Press("Enter");
        await reader.By("#changes").WaitForAsync();
        Assert.Contains("other", await reader.Text("#changes"), StringComparison.Ordinal);
        await reader.By("#take").FocusAsync();
        await reader.Press("Enter");
        await reader.By("#reading, h1.reading", "as much as its budget").WaitForAsync();
    }

    private static async Task Grid(Reader reader, int right)
    {
        await reader.By("#lines td.active").WaitForAsync();
        await reader.By("#lines").FocusAsync();
        for (var step = 0; step < right; step++)
        {
            await reader.Press("ArrowRight");
        }
    }
}
