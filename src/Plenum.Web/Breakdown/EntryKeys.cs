using Microsoft.JSInterop;

namespace Plenum.Web.Breakdown;

/// <summary>What the script of the line that somebody types in calls.</summary>
public sealed class EntryKeys(
    Func<string, Task<bool>> take,
    Func<bool, string, Task> level,
    Func<Task> leave,
    Func<string, Task> look,
    Func<Task<bool>> takeOver,
    Func<int, Task> move
)
{
    /// <summary>Takes what was typed; false if it was refused.</summary>
    [JSInvokable]
    public Task<bool> Take(string text) => take(text);

    /// <summary>One level down, or up.</summary>
    [JSInvokable]
    public Task Level(bool down, string text) => level(down, text);

    [JSInvokable]
    public Task Leave() => leave();

    /// <summary>Looks for parts of that name.</summary>
    [JSInvokable]
    public Task Look(string text) => look(text);

    /// <summary>Takes over the suggestion that is marked; false if there is none, or it was refused.</summary>
    [JSInvokable]
    public Task<bool> TakeOver() => takeOver();

    /// <summary>Marks the next suggestion, or the one before.</summary>
    [JSInvokable]
    public Task Move(int by) => move(by);
}
