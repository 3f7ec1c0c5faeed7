using Microsoft.JSInterop;

namespace Plenum.Web.Shell;

/// <summary>
/// A part of the page that a script module steers. A person can leave at any moment, and the page with them: what is
/// asked of a page that has gone is not done and is no fault.
/// </summary>
public sealed class ScriptPart : IAsyncDisposable
{
    private readonly IJSObjectReference module;
    private readonly IJSObjectReference? part;

    private ScriptPart(IJSObjectReference module, IJSObjectReference? made)
    {
        this.module = module;
        part = made;
    }

    /// <summary>A module whose functions are called as they are; null if the page has gone.</summary>
    /// <exception cref="JSException">the module cannot be loaded</exception>
    public static async Task<ScriptPart?> Load(IJSRuntime script, string address)
    {
        try
        {
            return new ScriptPart(
                await script.InvokeAsync<IJSObjectReference>("import", address),
                null
            );
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            return null;
        }
    }

    /// <summary>
    /// What a function of a module makes, to be called from then on; null if the page has gone, or the place on it for
    /// which it would be made.
    /// </summary>
    /// <exception cref="JSException">the module cannot be loaded, or the function fails</exception>
    public static async Task<ScriptPart?> Make(
        IJSRuntime script,
        string address,
        string maker,
        params object?[] arguments
    )
    {
        try
        {
            var loaded = await script.InvokeAsync<IJSObjectReference>("import", address);
            var made = await loaded.InvokeAsync<IJSObjectReference?>(maker, arguments);
            if (made is not null)
            {
                return new ScriptPart(loaded, made);
            }

            await loaded.DisposeAsync();
            return null;
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            return null;
        }
    }

    /// <summary>Calls a function of what was made, or of the module.</summary>
    /// <exception cref="JSException">the function fails</exception>
    public async Task Call(string function, params object?[] arguments)
    {
        try
        {
            await (part ?? module).InvokeVoidAsync(function, arguments);
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            // nobody is there to see it
        }
    }

    /// <summary>Calls a function that answers yes or no; no, if the page has gone.</summary>
    /// <exception cref="JSException">the function fails</exception>
    public async Task<bool> Asks(string function, params object?[] arguments)
    {
        try
        {
            return await (part ?? module).InvokeAsync<bool>(function, arguments);
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            return false;
        }
    }

    /// <summary>Calls a function that answers with text; null, if the page has gone.</summary>
    /// <exception cref="JSException">the function fails</exception>
    public async Task<string?> Text(string function, params object?[] arguments)
    {
        try
        {
            return await (part ?? module).InvokeAsync<string?>(function, arguments);
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            return null;
        }
    }

    /// <summary>
    /// Calls a function that answers with a text of any length as UTF-8 bytes, which are fetched in pieces; null, if the
    /// page has gone.
    /// </summary>
    /// <param name="function">The function; it returns a Uint8Array.</param>
    /// <param name="mostBytes">A longer text is refused.</param>
    /// <exception cref="JSException">the function fails</exception>
    /// <exception cref="ArgumentOutOfRangeException">the text is longer</exception>
    public async Task<string?> LongText(string function, long mostBytes)
    {
        try
        {
            await using var bytes = await (part ?? module).InvokeAsync<IJSStreamReference>(
                function
            );
            await using var stream = await bytes.OpenReadStreamAsync(mostBytes);
            using var reader = new StreamReader(stream);
            return await reader.ReadToEndAsync();
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            return null;
        }
    }

    public async ValueTask DisposeAsync()
    {
        try
        {
            if (part is not null)
            {
                await part.DisposeAsync();
            }

            await module.DisposeAsync();
        }
        catch (Exception gone) when (IsDeparture(gone))
        {
            // nothing is left to let go
        }
    }

    private static bool IsDeparture(Exception fault) =>
        fault is JSDisconnectedException or OperationCanceledException or ObjectDisposedException;
}
