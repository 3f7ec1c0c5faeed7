using Microsoft.JSInterop;

namespace Plenum.Web.Breakdown;

/// <summary>What the outline's script calls.</summary>
public sealed class OutlineKeys(
    Func<string, int, Task> act,
    Func<int, string> copy,
    Func<int, string, Task> paste
)
{
    /// <summary>A key was pressed at an element.</summary>
    [JSInvokable]
    public Task Act(string key, int position) => act(key, position);

    /// <summary>What is to stand on the clipboard.</summary>
    [JSInvokable]
    public string Copy(int position) => copy(position);

    /// <summary>Text was pasted at an element; of a long one the first 8 000 characters.</summary>
    [JSInvokable]
    public Task Paste(int position, string text) => paste(position, text);
}
