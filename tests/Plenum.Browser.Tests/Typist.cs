namespace Plenum.Browser.Tests;

/// <summary>
/// A person without a pointer whose keys are counted: each press is one, each letter is one, and so is each Tab on the way
/// to a field. Only keys are used, and what they act on is what has the focus. Before each key the person looks where it
/// will go, as people do.
/// </summary>
public sealed class Typist(Reader reader)
{
    private const int MostTabs = 120;

    private readonly List<(string Step, int Keys)> steps = [];

    /// <summary>Keys since the last step ended.</summary>
    private int keys;

    public IReadOnlyList<(string Step, int Keys)> Steps => steps;

    public int Keys => steps.Sum(step => step.Keys) + keys;

    public async Task Press(string key, int times = 1)
    {
        for (var time = 0; time < times; time++)
        {
            keys++;
            await reader.Press(key);
        }
    }

    public async Task Type(string text)
    {
        keys += text.Length;
        await reader.Type(text);
    }

    /// <summary>Types each text and a key after it.</summary>
    public async Task Enter(IEnumerable<string> texts, string key = "Enter")
    {
        foreach (var text in texts)
        {
            await Type(text);
            await Press(key);
        }
    }

    /// <summary>What the clipboard holds is put into the field that has the focus: one press.</summary>
    public async Task Paste(string text)
    {
        keys++;
        await reader.Page.Keyboard.InsertTextAsync(text);
    }

    /// <summary>Goes on with Tab until something has the focus.</summary>
    public async Task To(string selector)
    {
        await reader.By(selector).First.WaitForAsync();
        for (var tab = 0; tab < MostTabs; tab++)
        {
            if (await Has(selector))
            {
                return;
            }

            await Press("Tab");
        }

        Assert.Fail($"{selector} is not reached within {MostTabs} times Tab");
    }

    /// <summary>Waits until something has the focus.</summary>
    public Task On(string selector) =>
        reader.Page.WaitForFunctionAsync(
            "selector => document.activeElement?.matches(selector)",
            selector
        );

    /// <summary>Waits until the row, cell or crossing that has the focus says some words.</summary>
    public Task OnRow(string words) =>
        reader.Page.WaitForFunctionAsync(
            "words => document.activeElement !== document.body && (document.activeElement.innerText + document.activeElement.title).includes(words)",
            words
        );

    /// <summary>A step is done: notes its keys and keeps a picture of it.</summary>
    public async Task Done(string step)
    {
        steps.Add((step, keys));
        keys = 0;
        await reader.Picture($"{steps.Count:00}-{step.Replace(' ', '-')}");
    }

    private Task<bool> Has(string selector) =>
        reader.Page.EvaluateAsync<bool>(
            "selector => document.activeElement?.matches(selector) ?? false",
            selector
        );
}
