using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Plenum.Web.Host;

namespace Plenum.Web.Projects;

/// <summary>
/// Files come by PUT, one request for each. Three things keep others out: the address holds a number that only the
/// page knows, a token of the page goes along, and <see cref="OnlyThisHost"/> has looked where the request is from.
/// </summary>
public static class ImportEndpoints
{
    /// <summary>The header that brings the page's token.</summary>
    public const string TokenHeader = "RequestVerificationToken";

    /// <summary>Where the page fetches its token.</summary>
    public const string TokenAddress = "/projects/token";

    /// <summary>Where the files of an import are brought.</summary>
    public static string FilesAddress(string key, string id) =>
        $"/projects/{Uri.EscapeDataString(key)}/imports/{id}/files";

    /// <summary>Where its errors are fetched.</summary>
    public static string ErrorsAddress(string key, string id) =>
        $"/projects/{Uri.EscapeDataString(key)}/imports/{id}/errors.csv";

    public static void Map(WebApplication app)
    {
        app.MapGet(TokenAddress, Token);
        app.MapPut("/projects/{key}/imports/{id}/files", Take).DisableAntiforgery();
        app.MapGet("/projects/{key}/imports/{id}/errors.csv", Errors);
    }

    private static IResult Token(HttpContext context, IAntiforgery antiforgery) =>
        Results.Text(antiforgery.GetAndStoreTokens(context).RequestToken);

    private static async Task<IResult> Take(
        string key,
        string id,
        string? name,
        int? batch,
        HttpContext context,
        IAntiforgery antiforgery,
        ImportDesk desk
    )
    {
        // here and not by the framework, which would look for a form
        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return Refused(400, "Only the page that began this import may bring files.");
        }

        if (desk.Find(key, id) is not { } files)
        {
            return Refused(404, "This import has been left. Choose the files again.");
        }

        if (context.Request.ContentLength > UploadLimits.MostBytes)
        {
            return Refused(413, UploadLimits.TooMuch);
        }

        try
        {
            await files.Take(name ?? "", batch ?? 0, context.Request.Body, context.RequestAborted);
            return Results.NoContent();
        }
        catch (NotTakenException refused)
        {
            return Refused(refused.Status, refused.Message);
        }
        catch (BadHttpRequestException refused)
        {
            return Refused(
                refused.StatusCode,
                refused.StatusCode == 413
                    ? UploadLimits.TooMuch
                    : "The file did not arrive whole. Bring it again."
            );
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Refused(507, $"{name} could not be put down here: {error.Message}");
        }
        catch (OperationCanceledException)
        {
            return Refused(410, "Bringing was stopped.");
        }
    }

    private static IResult Errors(string key, string id, HttpContext context, ImportDesk desk)
    {
        if (desk.Find(key, id)?.Errors is not { } errors)
        {
            return Refused(404, "There is no list of errors here any more.");
        }

        context.Response.Headers.CacheControl = "no-store";
        return Results.File(ErrorSheet.Of(errors), "text/csv; charset=utf-8", $"{key}-errors.csv");
    }

    private static IResult Refused(int status, string message) =>
        Results.Text(message, statusCode: status);
}
