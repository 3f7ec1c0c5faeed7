using System.Buffers;
using System.Globalization;
using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Plenum.Core;
using Plenum.Workbench.Maps;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Host;

/// <summary>
/// The two binary documents that the map is drawn from. Their addresses carry the project's revision, so a browser may
/// keep them for good; they are composed once for a project value.
/// </summary>
public static class ProjectDocuments
{
    /// <summary>Smaller documents are not compressed: it would take longer than it saves.</summary>
    private const int LeastCompressed = 8 * 1024;

    private const string Binary = "application/octet-stream";

    /// <summary>Where the project document of a value is.</summary>
    public static string MapAddress(string key, Project project) =>
        $"/projects/{key}/map?revision={Number(project.Revision)}";

    /// <summary>Where the lens document of a value is.</summary>
    public static string LensAddress(string key, Project project, LensQuestion question) =>
        $"/projects/{key}/lens/{question.Word}?revision={Number(project.Revision)}"
        + (
            question.At is { } date
                ? "&at=" + date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                : ""
        )
        + (question.Person is { } person ? "&person=" + Uri.EscapeDataString(person) : "")
        + (question.Item is { } item ? "&item=" + Uri.EscapeDataString(item) : "");

    public static void Map(WebApplication app)
    {
        app.MapGet(
            "/projects/{key}/map",
            (HttpContext context, ProjectShelf shelf, string key, long revision) =>
                Send(
                    context,
                    shelf,
                    key,
                    revision,
                    project =>
                        AnswerBook.Ask(
                            project,
                            "map document",
                            (_, value) =>
                                Compose(output =>
                                    MapDocument.Write(value, output, MapFindings.Of(value))
                                )
                        )
                )
        );
        app.MapGet(
            "/projects/{key}/lens/{word}",
            (
                HttpContext context,
                ProjectShelf shelf,
                string key,
                string word,
                long revision,
                DateOnly? at,
                string? person,
                string? item
            ) =>
                Send(
                    context,
                    shelf,
                    key,
                    revision,
                    async project =>
                    {
                        var lens = await AnswerBook.Ask(
                            project,
                            new LensQuestion(word, at, person, item),
                            (question, value) => question.Ask(value)
                        );
                        return Compose(output => LensDocument.Write(lens, output));
                    }
                )
        );
    }

    private static async Task<IResult> Send(
        HttpContext context,
        ProjectShelf shelf,
        string key,
        long revision,
        Func<Project, Task<Composed>> compose
    )
    {
        if (shelf.Find(key)?.Current is not { } project)
        {
            return Results.Text("No open project has this name.", statusCode: 404);
        }

        if (project.Revision != revision)
        {
            // the page is about to hear of the newer revision, and asks again
            return Results.NoContent();
        }

        Composed document;
        try
        {
            document = await compose(project);
        }
        catch (QuestionException wrong)
        {
            return Results.Text(wrong.Message, statusCode: StatusCodes.Status400BadRequest);
        }

        var headers = context.Response.Headers;
        headers.CacheControl = "private, max-age=31536000, immutable";
        headers.Vary = "Accept-Encoding";
        if (
            document.Compressed is { } compressed
            && context
                .Request.Headers.AcceptEncoding.ToString()
                .Contains("br", StringComparison.Ordinal)
        )
        {
            headers.ContentEncoding = "br";
            return Results.Bytes(compressed, Binary);
        }

        return Results.Bytes(document.Plain, Binary);
    }

    private static Composed Compose(Action<IBufferWriter<byte>> write)
    {
        var output = new ArrayBufferWriter<byte>(1 << 16);
        write(output);
        var plain = output.WrittenSpan.ToArray();
        if (plain.Length < LeastCompressed)
        {
            return new Composed(plain, null);
        }

        // the quickest setting: on the machine itself a better one costs more time than it saves
        var compressed = new byte[BrotliEncoder.GetMaxCompressedLength(plain.Length)];
        return BrotliEncoder.TryCompress(plain, compressed, out var length, quality: 1, window: 22)
            ? new Composed(plain, compressed[..length])
            : new Composed(plain, null);
    }

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed record Composed(byte[] Plain, byte[]? Compressed);
}
