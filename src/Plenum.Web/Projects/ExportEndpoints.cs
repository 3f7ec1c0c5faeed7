using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Plenum.Web.Host;
using Plenum.Workbench;

namespace Plenum.Web.Projects;

/// <summary>A project's tables as one file to fetch: CSV files in an archive, or a workbook.</summary>
public static class ExportEndpoints
{
    /// <summary>Where a file that is ready is fetched. It is gone afterwards.</summary>
    public static string Address(ExportJob job) =>
        $"/projects/{Uri.EscapeDataString(job.Project.Key)}/exports/{job.Id}";

    public static void Map(WebApplication app)
    {
        app.MapGet("/projects/{key}/exports/{id}", Fetch);
        app.MapGet("/projects/{key}/export.{format}", WriteAndFetch);
    }

    private static async Task<IResult> Fetch(
        string key,
        string id,
        HttpContext context,
        ExportDesk desk
    ) =>
        desk.Find(key, id) is { } job
            ? await Send(job, context)
            : Results.Text(
                "This file was fetched already, or the program was started anew. Export again.",
                statusCode: 404
            );

    /// <summary>In one request, for those who do not need to see how far it is.</summary>
    private static async Task<IResult> WriteAndFetch(
        string key,
        string format,
        HttpContext context,
        ExportDesk desk,
        ProjectShelf shelf
    )
    {
        ExportFormat? wanted = format switch
        {
            "zip" => ExportFormat.Csv,
            "xlsx" => ExportFormat.Xlsx,
            _ => null,
        };
        return wanted is null
                ? Results.Text("export.zip or export.xlsx can be fetched.", statusCode: 404)
            : shelf.Find(key) is { } project
                ? await Send(desk.Begin(project, wanted.Value), context)
            : Results.Text("No project is served at this address.", statusCode: 404);
    }

    private static async Task<IResult> Send(ExportJob job, HttpContext context)
    {
        job.IsFetched = true;
        context.Response.OnCompleted(() =>
        {
            job.Dispose();
            return Task.CompletedTask;
        });
        context.Response.Headers.CacheControl = "no-store";
        await job.Done.WaitAsync(context.RequestAborted);
        return job.FilePath is { } path
            ? Results.File(path, ExportJob.TypeOf(job.Format), Path.GetFileName(path))
            : Results.Text(job.Refusal ?? "Writing was stopped.", statusCode: 409);
    }
}
