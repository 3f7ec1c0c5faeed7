using System.Globalization;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network.Assessment;

namespace Plenum.Core;

/// <summary>What holds for the whole project, read from its keys and values.</summary>
public sealed record ProjectSettings
{
    /// <summary>Keys that a project may set, with what is expected of their values.</summary>
    public static readonly IReadOnlyDictionary<string, string> Keys = new Dictionary<
        string,
        string
    >(StringComparer.Ordinal)
    {
        ["code"] = "the project's code",
        ["name"] = "the project's name",
        ["currency"] = "a currency code of ISO 4217, such as EUR",
        ["start"] = "a date such as 2026-03-31",
        ["status_date"] = "a date such as 2026-03-31",
        ["calendar"] = "the code of a calendar",
        ["variance_threshold"] = "per cent of the budget, 0 to 100, such as 10",
        ["variance_steps"] = "two per cents, the second greater, such as 3 10",
        ["accruals"] = "reversed or as_booked",
        ["progress"] = "logic_holds or progress_rules",
        ["code_mask"] = "the form of codes by level, such as 00.0.00.0",
        ["level_names"] =
            "a name of up to 60 characters for each level, root first, separated by semicolons",
        ["language"] =
            "the language of the names, one of "
            + string.Join(", ", SplitWords.Languages)
            + "; or none, where all words are the project's own",
        ["manager_open_packages"] = "packages, 1 to 10000",
    }
        .Concat(AuditThresholds.Keys)
        .Concat(AssessmentLimits.Keys)
        .ToDictionary(StringComparer.Ordinal);

    private const int LongestLevelName = 60;

    public string Code { get; init; } = "";

    public string Name { get; init; } = "";

    public Currency Currency { get; init; } = Currency.Euro;

    public DateOnly? Start { get; init; }

    public DateOnly? StatusDate { get; init; }

    /// <summary>Code of the project's own calendar; Monday to Friday where none is named.</summary>
    public string? Calendar { get; init; }

    /// <summary>Share of a row's budget beyond which a variance is shown; 10 % is common practice.</summary>
    public Fraction VarianceThreshold { get; init; } = new(1_000);

    /// <summary>Up to which share a variance is within limits, on the map and beside other variances; 3 % is common practice.</summary>
    public Fraction VarianceStep { get; init; } = new(300);

    /// <summary>Beyond which share a variance is far better or far worse; 10 % is common practice.</summary>
    public Fraction FarVarianceStep { get; init; } = new(1_000);

    /// <summary>Names of the levels of the breakdown, root first; levels beyond them have none.</summary>
    public IReadOnlyList<string> LevelNames { get; init; } = [];

    public bool AccrualsReversed { get; init; } = true;

    /// <summary>Out-of-sequence work waits for its unfinished predecessors.</summary>
    public bool LogicHolds { get; init; } = true;

    /// <summary>The form of codes by level, such as 00.0.00.0; empty where none is agreed.</summary>
    public string CodeMask { get; init; } = "";

    /// <summary>The language whose word list tells the logic of splits; null for none.</summary>
    public string? Language { get; init; } = SplitWords.Languages[0];

    /// <summary>How many open packages a control account manager should have at most; null where no limit is agreed.</summary>
    public int? MostOpenPackages { get; init; }

    /// <summary>How much it takes before the audit finds something.</summary>
    public AuditThresholds Audit { get; init; } = new();

    /// <summary>Limits of the assessment of the schedule.</summary>
    public AssessmentLimits Assessment { get; init; } = new();

    /// <summary>Reads the settings; a value that is not understood is reported and left at its default.</summary>
    public static ProjectSettings Read(Table project, Table? calendars, IRowFaults? faults)
    {
        var settings = new ProjectSettings();
        for (var row = 0; row < project.Count; row++)
        {
            var key = project.Codes[row]!;
            if (key.StartsWith("x_", StringComparison.Ordinal))
            {
                continue;
            }

            if (!Keys.TryGetValue(key, out var expected))
            {
                var nearest = NearestWord.Of(key, Keys.Keys);
                faults?.Add(
                    project,
                    row,
                    ProjectTable.Key,
                    "one of " + string.Join(", ", Keys.Keys),
                    $"\"{key}\" is not a setting"
                        + (nearest is null ? "" : $"; did you mean {nearest}?")
                );
                continue;
            }

            var value = project.Texts(ProjectTable.Value)[row] ?? "";
            if (settings.With(key, value, calendars) is { } next)
            {
                settings = next;
            }
            else
            {
                faults?.Add(
                    project,
                    row,
                    ProjectTable.Value,
                    expected,
                    $"\"{value}\" found for {key}, {expected} expected"
                );
            }
        }

        return settings;
    }

    private ProjectSettings? With(string key, string value, Table? calendars) =>
        key switch
        {
            "code" => this with { Code = value },
            "name" => this with { Name = value },
            "currency" => Currency.TryParse(value, out var currency)
                ? this with
                {
                    Currency = currency,
                }
                : null,
            "start" => ParseDate(value) is { } start ? this with { Start = start } : null,
            "status_date" => ParseDate(value) is { } date ? this with { StatusDate = date } : null,
            "calendar" => calendars is null || calendars.RowOfCode(value) >= 0
                ? this with
                {
                    Calendar = value,
                }
                : null,
            "variance_threshold" => Fraction.TryParsePercent(value) is { } threshold
                ? this with
                {
                    VarianceThreshold = threshold,
                }
                : null,
            "variance_steps" => ParseSteps(value) is var (near, far)
                ? this with
                {
                    VarianceStep = near,
                    FarVarianceStep = far,
                }
                : null,
            "level_names" => ParseNames(value) is { } names
                ? this with
                {
                    LevelNames = names,
                }
                : null,
            "accruals" => value is "reversed" or "as_booked"
                ? this with
                {
                    AccrualsReversed = value == "reversed",
                }
                : null,
            "progress" => value is "logic_holds" or "progress_rules"
                ? this with
                {
                    LogicHolds = value == "logic_holds",
                }
                : null,
            "code_mask" => this with { CodeMask = value },
            "language" => value == "none"
            || SplitWords.Languages.Contains(value, StringComparer.Ordinal)
                ? this with
                {
                    Language = value == "none" ? null : value,
                }
                : null,
            "manager_open_packages" => int.TryParse(
                value,
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var most
            )
            && most is >= 1 and <= 10_000
                ? this with
                {
                    MostOpenPackages = most,
                }
                : null,
            _ when AuditThresholds.Keys.ContainsKey(key) => Audit.With(key, value) is { } audit
                ? this with
                {
                    Audit = audit,
                }
                : null,
            _ when AssessmentLimits.Keys.ContainsKey(key) => Assessment.With(key, value)
                is { } limits
                ? this with
                {
                    Assessment = limits,
                }
                : null,
            _ => this,
        };

    private static DateOnly? ParseDate(string value) =>
        DateOnly.TryParseExact(
            value,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        )
            ? date
            : null;

    private static (Fraction Near, Fraction Far)? ParseSteps(string value) =>
        value.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var first, var second]
        && Fraction.TryParsePercent(first) is { } near
        && Fraction.TryParsePercent(second) is { } far
        && near.BasisPoints < far.BasisPoints
            ? (near, far)
            : null;

    private static string[]? ParseNames(string value)
    {
        var names = value.Split(';', StringSplitOptions.TrimEntries);
        return names.All(name => name.Length is > 0 and <= LongestLevelName) ? names : null;
    }
}
