using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.WebUtilities;
using Plenum.Core;
using Plenum.Web.Host;
using Plenum.Workbench.Words;

namespace Plenum.Web.Shell;

/// <summary>
/// What one person looks at: project, chapter, status date, element in focus. All of it stands in the address, so that
/// back, forward, reload and a copied link lead to the same sheet.
/// </summary>
public sealed class Sheet : IDisposable
{
    /// <summary>From so many elements on, what is computed about all of them after an edit waits until typing rests.</summary>
    private const int Large = 50_000;

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(600);

    private readonly NavigationManager navigation;
    private readonly ProjectShelf shelf;
    private readonly TimeProvider clock;
    private Amounts? money;
    private string path = "";
    private Dictionary<string, string> query = new(StringComparer.Ordinal);

    public Sheet(NavigationManager navigation, ProjectShelf shelf, TimeProvider clock)
    {
        this.clock = clock;
        this.navigation = navigation;
        this.shelf = shelf;
        navigation.LocationChanged += OnLocationChanged;
        Read();
    }

    /// <summary>The address or the project's value has changed.</summary>
    public event Action? Changed;

    /// <summary>The project at this address; null on pages that belong to none.</summary>
    public ShelvedProject? Shelved { get; private set; }

    /// <summary>The value that is shown; null until the project is open.</summary>
    public Project? Project => Shelved?.Current;

    /// <summary>The one unit of money of this sheet; the project's own unless the sheet shows a small part of it.</summary>
    public Amounts? Money
    {
        get => money ?? (Project is { } project ? MoneyUnit.Of(project) : null);
        set
        {
            if (value?.Unit != money?.Unit)
            {
                money = value;
                Changed?.Invoke();
            }
        }
    }

    /// <summary>
    /// Waits for a moment where the project is large, so that whoever types sees what was typed before the audit, the map
    /// and the chapters' marks are made anew. Asked after edits, not before the first answer.
    /// </summary>
    /// <returns>False if it has been edited again meanwhile: whoever asks then does it.</returns>
    public async Task<bool> Rests(Project project)
    {
        if (project.Tree.Count >= Large)
        {
            await Task.Delay(Pause, clock);
        }

        return ReferenceEquals(project, Project);
    }

    /// <summary>Which variances count as better or worse in this project.</summary>
    public Accounts.Limits Limits => Accounts.Limits.Of(Project?.Settings ?? new ProjectSettings());

    /// <summary>The chapter's word in the address, such as <c>accounts</c>.</summary>
    public string Chapter { get; private set; } = "";

    /// <summary>The place within the chapter, such as <c>parts</c>; empty for its own sheet.</summary>
    public string Place { get; private set; } = "";

    /// <summary>The status date that was chosen; null for the project's own.</summary>
    public DateOnly? At =>
        DateOnly.TryParseExact(
            Value("at"),
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        )
            ? date
            : null;

    /// <summary>Index of the period at whose end everything is taken; −1 before the first.</summary>
    public int Period =>
        Project is not { } project ? -1
        : At is { } date ? project.Periods.LastEndedBy(date)
        : project.CurrentPeriod();

    /// <summary>Code of the element in focus, if it exists.</summary>
    public string? Focus => Value("focus") is { } code && PositionOf(code) >= 0 ? code : null;

    /// <summary>Position of the element in focus; −1 for none.</summary>
    public int FocusPosition => Value("focus") is { } code ? PositionOf(code) : -1;

    /// <summary>A further word of the address, such as the cut that a table is by.</summary>
    public string? Value(string key) => query.GetValueOrDefault(key);

    /// <summary>The address of a chapter of this project with the same date and focus.</summary>
    public string Address(string chapter) => AddressOf(chapter);

    /// <summary>This address with one word changed; null takes it away.</summary>
    public string AddressWith(string key, string? value) =>
        navigation.GetUriWithQueryParameter(key, value);

    /// <summary>This address with several words changed.</summary>
    public string AddressWith(IReadOnlyDictionary<string, object?> words) =>
        navigation.GetUriWithQueryParameters(words);

    /// <summary>The address of a sheet of this project at the same date and focus, with words of its own.</summary>
    public string AddressOf(string sheet, params (string Key, string? Value)[] words)
    {
        var all = words.ToDictionary(
            word => word.Key,
            word => (object?)word.Value,
            StringComparer.Ordinal
        );
        foreach (var kept in (string[])["at", "focus", "values", "width", "lens"])
        {
            all.TryAdd(kept, Value(kept));
        }

        return navigation.GetUriWithQueryParameters($"/p/{Shelved?.Key}/{sheet}", all);
    }

    /// <summary>Focuses an element; null for none.</summary>
    public void FocusOn(string? code)
    {
        if (code != Value("focus") || Value("account") is not null)
        {
            Change(
                new Dictionary<string, object?>(StringComparer.Ordinal)
                {
                    ["focus"] = code,
                    ["account"] = null,
                }
            );
        }
    }

    /// <summary>Shows everything at a date; null for the project's own.</summary>
    public void ShowAt(DateOnly? date) =>
        Change("at", date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    /// <summary>Changes one word of the address, without a new entry in the history unless asked for.</summary>
    public void Change(string key, string? value, bool replace = true) =>
        navigation.NavigateTo(AddressWith(key, value), replace: replace);

    /// <summary>Changes several words of the address at once.</summary>
    public void Change(IReadOnlyDictionary<string, object?> words, bool replace = true) =>
        navigation.NavigateTo(navigation.GetUriWithQueryParameters(words), replace: replace);

    public void Dispose()
    {
        navigation.LocationChanged -= OnLocationChanged;
        if (Shelved is not null)
        {
            Shelved.Changed -= OnProjectChanged;
        }
    }

    private int PositionOf(string code) =>
        Project is { } project ? project.Tree.Elements.RowOfCode(code) : -1;

    private void OnLocationChanged(object? sender, LocationChangedEventArgs change)
    {
        Read();
        Changed?.Invoke();
    }

    private void OnProjectChanged() => Changed?.Invoke();

    private void Read()
    {
        var address = navigation.ToAbsoluteUri(navigation.Uri);
        query = QueryHelpers
            .ParseQuery(address.Query)
            .ToDictionary(pair => pair.Key, pair => pair.Value.ToString(), StringComparer.Ordinal);
        if (path != address.AbsolutePath)
        {
            path = address.AbsolutePath;
            money = null;
        }

        var parts = address.AbsolutePath.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var isSheet = parts is ["p", _, ..];
        Chapter = isSheet && parts.Length > 2 ? parts[2] : "";
        Place = isSheet && parts.Length > 3 ? parts[3] : "";
        var found = isSheet ? shelf.Find(Uri.UnescapeDataString(parts[1])) : null;
        if (!ReferenceEquals(found, Shelved))
        {
            if (Shelved is not null)
            {
                Shelved.Changed -= OnProjectChanged;
            }

            Shelved = found;
            if (found is not null)
            {
                found.Changed += OnProjectChanged;
            }
        }
    }
}
