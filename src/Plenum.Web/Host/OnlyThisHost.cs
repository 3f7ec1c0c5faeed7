using Microsoft.AspNetCore.Http;

namespace Plenum.Web.Host;

/// <summary>
/// Answers only requests that name this machine: a page of another site that had its name point here would be asked
/// by that name. Without sign-in this is what keeps other sites out.
/// </summary>
public sealed class OnlyThisHost(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (PlenumWeb.IsLoopback(context.Request.Host.Host.Trim('[', ']')) && IsOwnOrigin(context))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return context.Response.WriteAsync(
            "Only pages of this program on this machine are answered."
        );
    }

    /// <summary>A browser names the page that asks; a connection or a change is only for our own.</summary>
    private static bool IsOwnOrigin(HttpContext context)
    {
        var origin = context.Request.Headers.Origin.ToString();
        return origin.Length == 0
            || origin == $"{context.Request.Scheme}://{context.Request.Host.Value}";
    }
}
