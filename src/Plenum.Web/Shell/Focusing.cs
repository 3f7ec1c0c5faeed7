using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Plenum.Web.Shell;

/// <summary>Gives the keys to a part of the page; nothing if it, or the page, has gone.</summary>
internal static class Focusing
{
    public static async Task On(ElementReference part)
    {
        try
        {
            await part.FocusAsync();
        }
        catch (Exception gone)
            when (gone
                    is JSException
                        or JSDisconnectedException
                        or OperationCanceledException
                        or InvalidOperationException
            )
        {
            // nobody is there to take them
        }
    }
}
