using System.Diagnostics;

namespace Plenum.Browser.Tests;

/// <summary>The breakdown is written by keyboard, by two people at once. How they work is common practice.</summary>
public sealed class EditingTests(Site site)
{
    [Fact]
    public async Task What_one_person_types_another_sees_within_a_second_without_reloading()
    {
        var project = await site.Begin("live");
        await using var ann = await Reader.At(site, $"/p/{project}/breakdown", person: "Ann");
        await using var bo = await Reader.At(site, $"/p/{project}/breakdown", person: "Bo");
        await Row(ann, "Plant");
        await Row(bo, "Plant");
        await ann.By("#outline [data-row='0'] [data-rowlink]").FocusAsync();
        await ann.Press("Shift+Enter");
        await ann.Focus("entry-text");
        await ann.Type("Intake");
        var watch = Stopwatch.StartNew();
        await ann.Press("Enter");
        await Row(bo, "Intake");
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"seen by the other after {watch.ElapsedMilliseconds} ms"
        );
        Assert.InRange(watch.ElapsedMilliseconds, 0, 1_000 * site.Patience);
        await ann.Type("Outfall");
        await ann.Press("Enter");
        await Row(bo, "Outfall");
    }

    [Fact]
    public async Task Of_two_values_for_one_field_the_second_writer_chooses()
    {
        var project = await site.Begin("conflict");
        await using var ann = await Reader.At(site, $"/p/{project}/breakdown", person: "Ann");
        await using var bo = await Reader.At(site, $"/p/{project}/breakdown", person: "Bo");
        await ann.By("#field-output").WaitForAsync();
        await bo.By("#field-output").WaitForAsync();
        // both begin with the same field, still empty
        await ann.By("#field-output").FocusAsync();
        await bo.By("#field-output").FocusAsync();
        await ann.Type("Water at the fence");
        await bo.Type("Drinking water");
        await ann.Press("Tab");
        await ann.Page.WaitForFunctionAsync(
            "() => document.getElementById('edit-said').innerText.includes('Water at the fence')"
        );
        await bo.Press("Tab");
        await bo.By("#conflict").WaitForAsync();
        var both = await bo.Text("#conflict");
        Assert.Contains("Ann", both, StringComparison.Ordinal);
        Assert.Contains("Water at the fence", both, StringComparison.Ordinal);
        Assert.Contains("Drinking water", both, StringComparison.Ordinal);
        await bo.By("#keep-mine").FocusAsync();
        await bo.Press("Enter");
        await ann.Page.WaitForFunctionAsync(
            "() => document.getElementById('field-output').value === 'Drinking water'"
        );
        Assert.Equal(0, await bo.By("#conflict").CountAsync());
    }

    [Fact]
    public async Task An_outline_is_typed_renamed_moved_and_taken_back_by_keyboard()
    {
        var project = await site.Begin("typing");
        await using var reader = await Reader.At(site, $"/p/{project}/breakdown");
        await reader.By("#outline [data-row='0'] [data-rowlink]").FocusAsync();
        await reader.Press("Shift+Enter");
        await reader.Focus("entry-text");
        foreach (var name in new[] { "Intake", "Pump hall", "Outfall" })
        {
            await reader.Type(name);
            await reader.Press("Enter");
        }

        await Row(reader, "Outfall");
        await reader.Press("Tab");
        await reader.Type("Pipes");
        await reader.Press("Enter");
        await Row(reader, "Pipes");
        await reader.Press("Escape");
        await Lines(reader, "Plant", "Intake", "Pump hall", "Outfall", "Pipes");
        await reader.Page.WaitForFunctionAsync(
            "() => document.activeElement?.innerText.includes('Pipes')"
        );
        await reader.Press("ArrowUp");
        await reader.Press("Alt+ArrowUp");
        await Lines(reader, "Plant", "Intake", "Outfall", "Pipes", "Pump hall");
        await reader.Press("Control+z");
        await Lines(reader, "Plant", "Intake", "Pump hall", "Outfall", "Pipes");
        await reader.Press("Control+y");
        await Lines(reader, "Plant", "Intake", "Outfall", "Pipes", "Pump hall");
    }

    [Fact]
    public async Task A_value_that_is_not_understood_stays_in_its_field_and_is_told_what_was_expected()
    {
        var project = await site.Begin("wrong");
        await using var reader = await Reader.At(site, $"/p/{project}/breakdown");
        await reader.By("#field-allotted").WaitForAsync();
        await reader.By("#field-allotted").FocusAsync();
        await reader.Type("twelve");
        await reader.Press("Tab");
        await reader.By("#edit-trouble").WaitForAsync();
        Assert.Contains(
            "an amount such as",
            await reader.Text("#edit-trouble"),
            StringComparison.Ordinal
        );
        Assert.Equal("twelve", await reader.By("#field-allotted").InputValueAsync());
        await reader.By("#field-allotted").FillAsync("1200");
        await reader.Press("Tab");
        await reader.Page.WaitForFunctionAsync(
            "() => document.getElementById('edit-trouble') === null"
        );
        Assert.Equal("1200.00", await reader.By("#field-allotted").InputValueAsync());
    }

    private static Task Row(Reader reader, string name) =>
        reader.By("#outline [data-row] .name", name).WaitForAsync();

    private static Task Lines(Reader reader, params string[] names) =>
        reader.Page.WaitForFunctionAsync(
            "names => [...document.querySelectorAll('#outline [data-row] .name')].map(name => name.innerText).join('|') === names",
            string.Join('|', names)
        );
}
