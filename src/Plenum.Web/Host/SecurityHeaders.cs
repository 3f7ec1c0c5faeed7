using Microsoft.AspNetCore.Http;

namespace Plenum.Web.Host;

/// <summary>
/// Every answer says what a page may load: its own files and its own connection, no script and no style sheet that
/// stands in the page. Single style attributes are allowed: tables that draw only what is in view set heights so.
/// </summary>
public sealed class SecurityHeaders(RequestDelegate next)
{
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; "
        + "img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'self'; "
        + "frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        return next(context);
    }
}
