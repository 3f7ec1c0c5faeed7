using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Plenum.Web.Host;
using Plenum.Web.Shell;
using Plenum.Workbench.Words;

namespace Plenum.Web.Projects;

/// <summary>The steps of bringing files in on the page: bring, look, take over. What is drawn stands in ImportSheet.</summary>
public abstract class ImportSteps : ComponentBase, IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan Pace = TimeSpan.FromMilliseconds(150);

    private ScriptPart? taker;
    private DotNetObjectReference<ImportSteps>? self;
    private long? bringingSince;
    private long bringingBytes;
    private long receivedBefore;
    private long? shownSince;
    private bool left;

    [Parameter, EditorRequired]
    public required ShelvedProject Shelved { get; set; }

    /// <summary>Knows who works on the page.</summary>
    [Inject]
    protected Editing Editing { get; set; } = null!;

    [Inject]
    public required ImportDesk Desk { get; set; }

    [Inject]
    public required IJSRuntime Script { get; set; }

    [Inject]
    public required NavigationManager Navigation { get; set; }

    [Inject]
    public required Sheet Sheet { get; set; }

    [Inject]
    public required TimeProvider Clock { get; set; }

    protected ElementReference Host { get; set; }

    /// <summary>Null until the first file comes.</summary>
    protected ImportSession? Session { get; private set; }

    protected IReadOnlyList<BroughtFile> Brought { get; private set; } = [];

    /// <summary>What was passed over or refused when files came last.</summary>
    protected string? Said { get; private set; }

    protected bool Replace { get; private set; }

    protected string Reason { get; set; } = "";

    protected bool IsAccepting { get; private set; }

    protected bool IsBusy => bringingSince is not null || Session?.Since is not null;

    /// <summary>What takes less than 300 ms is not announced.</summary>
    protected bool ShowsProgress =>
        shownSince is { } since && IsBusy && Clock.GetElapsedTime(since) >= Patience;

    protected double GoingPart =>
        bringingSince is null ? Session?.Part ?? 0
        : bringingBytes == 0 ? 1
        : Math.Clamp((Session!.Files.Received - receivedBefore) / (double)bringingBytes, 0, 1);

    protected string GoingWord =>
        bringingSince is not null ? "Bringing the files"
        : IsAccepting ? "Taking the rows"
        : "Reading the files";

    protected string Going
    {
        get
        {
            var done = Amounts.Percent((decimal)Math.Floor(GoingPart * 100) / 100);
            var what = bringingSince is null ? Session?.What : null;
            return string.IsNullOrEmpty(what)
                ? $"{GoingWord}, {done} done."
                : $"{GoingWord}, {done} done: {what}.";
        }
    }

    protected string Sentence =>
        IsBusy && ShowsProgress ? GoingWord + "."
        : Session?.Preview is { } preview ? preview.Sentence
        : Session?.Trouble is not null
            ? $"{ImportPreview.Counted(Brought.Count, "file")} brought, nothing changed."
        : Brought.Count > 0 ? $"{ImportPreview.Counted(Brought.Count, "file")} brought."
        : $"Bring tables into the project {Shelved.Name}. Nothing counts until you have seen what would change.";

    /// <summary>Files are about to come.</summary>
    /// <returns>Where they are sent; null if they are not taken now.</returns>
    [JSInvokable]
    public string? OnChosen(int count, long bytes, string[] passedOver, int passedOverCount)
    {
        Said = passedOverCount == 0 ? null : WordsOfPassedOver(passedOver, passedOverCount);
        if (Session?.Since is not null)
        {
            Said = "The files are being read. Bring more when that is done.";
        }
        else if (count > UploadLimits.MostFiles || bytes > UploadLimits.MostBytes)
        {
            Said =
                count > UploadLimits.MostFiles
                    ? $"These are {Amounts.Count(count)} files; at most {UploadLimits.MostFiles} come in one import. Bring them in several."
                    : UploadLimits.TooMuch;
        }
        else if (count > 0)
        {
            try
            {
                Session ??= new ImportSession(
                    Shelved,
                    Desk.Begin(Shelved.Key),
                    Editing.Person,
                    Clock
                );
                Session.Forget();
                receivedBefore = Session.Files.Received;
                bringingBytes = bytes;
                bringingSince = Clock.GetTimestamp();
                _ = Watch();
                StateHasChanged();
                return ImportEndpoints.FilesAddress(Shelved.Key, Session.Files.Id);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                Said = $"Files cannot be put down on this machine: {error.Message}";
            }
        }

        StateHasChanged();
        return null;
    }

    /// <summary>The files have come, or were refused.</summary>
    [JSInvokable]
    public async Task OnBrought(string[] troubles, int troubled, bool stopped)
    {
        bringingSince = null;
        if (troubled > 0)
        {
            var more = troubled - troubles.Length;
            Said = string.Join(
                " ",
                [
                    .. Said is null ? Array.Empty<string>() : [Said],
                    .. troubles,
                    .. more == 0
                        ? Array.Empty<string>()
                        : [$"{Amounts.Count(more)} more were not taken."],
                ]
            );
        }
        else if (stopped)
        {
            Said = "Bringing was stopped. The files that had come whole are here.";
        }

        Refresh();
        if (Session is not null && Brought.Count > 0 && !stopped)
        {
            await Look();
        }

        StateHasChanged();
    }

    public async ValueTask DisposeAsync()
    {
        left = true;
        // first what must not stay: the page itself may not answer any more
        if (Session is not null)
        {
            await Session.DisposeAsync();
        }

        if (taker is not null)
        {
            await taker.Call("destroy");
            await taker.DisposeAsync();
        }

        self?.Dispose();
        GC.SuppressFinalize(this);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            self = DotNetObjectReference.Create(this);
            taker = await ScriptPart.Make(Script, "./js/upload.js", "takeFiles", Host, self);
        }
    }

    protected async Task Look()
    {
        if (Session is not null && Brought.Count > 0)
        {
            var step = Session.Look(Replace);
            _ = Watch();
            await step;
            StateHasChanged();
        }
    }

    protected async Task ChangeReplace(ChangeEventArgs change)
    {
        Replace = change.Value is true;
        await Look();
    }

    protected async Task Accept()
    {
        if (IsBusy || Session?.Preview?.CanBeTaken != true)
        {
            return;
        }

        IsAccepting = true;
        var step = Session.Accept(Reason);
        _ = Watch();
        var end = await step;
        IsAccepting = false;
        if (end == Accepted.Taken && !left && Shelved.Current is { } project)
        {
            Navigation.NavigateTo(Sheet.Address(ProjectDoor.ChapterOf(project)));
        }
    }

    protected async Task Stop()
    {
        if (bringingSince is not null && taker is not null)
        {
            await taker.Call("stop");
        }

        Session?.Stop();
    }

    protected async Task TakeAway(BroughtFile file)
    {
        Session!.Files.TakeAway(file.Name);
        Session.Forget();
        Said = null;
        Refresh();
        await Look();
    }

    protected void TakeAllAway()
    {
        Session!.Files.Clear();
        Session.Forget();
        Said = null;
        Refresh();
    }

    private static string WordsOfPassedOver(string[] names, int count)
    {
        var more = count - names.Length;
        return $"Passed over: {string.Join(", ", names)}{(more == 0 ? "" : $" and {Amounts.Count(more)} more")}. "
            + "Read are .csv, .tsv and .xlsx files, of a folder those directly in it.";
    }

    private void Refresh() => Brought = Session?.Files.Files ?? [];

    /// <summary>Draws how far it is for as long as something is being done.</summary>
    private async Task Watch()
    {
        if (shownSince is not null)
        {
            return;
        }

        shownSince = Clock.GetTimestamp();
        while (!left && IsBusy)
        {
            await Task.Delay(Pace);
            StateHasChanged();
        }

        shownSince = null;
        if (!left)
        {
            StateHasChanged();
        }
    }
}
