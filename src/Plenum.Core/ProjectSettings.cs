using System.Globalization;
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
    >(AssessmentLimits.Keys, StringComparer.Ordinal)
    {
        ["code"] = "the project's code",
        ["name"] = "the project's name",
        ["currency"] = "a currency code of ISO 4217, such as EUR",
        ["start"] = "a date such as 2026-03-31",
        ["status_date"] = "a date such as 2026-03-31",
        ["calendar"] = "the code of a calendar",
        ["variance_threshold"] = "per cent of the budget, 0 to 100, such as 10",
        ["accruals"] = "reversed or as_booked",
        ["progress"] = "logic_holds or progress_rules",
        ["code_mask"] = "the form of codes by level, such as 00.0.00.0",
    };

    public string Code { get; init; } = "";

    public string Name { get; init; } = "";

    public Currency Currency { get; init; } = Currency.Euro;

    public DateOnly? Start { get; init; }

    public DateOnly? StatusDate { get; init; }

    /// <summary>Code of the project's own calendar; Monday to Friday where none is named.</summary>
    public string? Calendar { get; init; }

    /// <summary>Share of a row's budget beyond which a variance is shown; 10 % is common practice.</summary>
    public Fraction VarianceThreshold { get; init; } = new(1_000);

    public bool AccrualsReversed { get; init; } = true;

    /// <summary>Out-of-sequence work waits for its unfinished predecessors.</summary>
    public bool LogicHolds { get; init; } = true;

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
            "variance_threshold" => ParsePercent(value) is { } threshold
                ? this with
                {
                    VarianceThreshold = threshold,
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

    private static Fraction? ParsePercent(string value) =>
        decimal.TryParse(
            value,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var percent
        )
        && percent is >= 0 and <= 100
        && decimal.IsInteger(percent * 100)
            ? new Fraction((int)(percent * 100))
            : null;
}
