using System.Globalization;

namespace Plenum.Core.Network.Assessment;

/// <summary>
/// Limits of the assessment. They are flags to look closer, not limits of compliance (GAO-16-89G App. VII); a project can
/// set each by its key. Shares are fractions of one.
/// </summary>
public sealed record AssessmentLimits
{
    /// <summary>Keys that a project may set, with what is expected of their values.</summary>
    public static readonly IReadOnlyDictionary<string, string> Keys = new Dictionary<
        string,
        string
    >(StringComparer.Ordinal)
    {
        ["assess_logic"] = Percent(5),
        ["assess_leads"] = Percent(0),
        ["assess_lags"] = Percent(5),
        ["assess_finish_to_start"] = Percent(90),
        ["assess_hard_conditions"] = Percent(5),
        ["assess_high_float"] = Percent(5),
        ["assess_float_days"] = Days(44),
        ["assess_negative_float"] = Percent(0),
        ["assess_high_duration"] = Percent(5),
        ["assess_duration_days"] = Days(44),
        ["assess_window_days"] = Days(130),
        ["assess_invalid_dates"] = Percent(0),
        ["assess_resources"] = Percent(0),
        ["assess_missed"] = Percent(5),
        ["assess_delay_days"] = Days(600),
        ["assess_path_index"] = Index,
        ["assess_execution_index"] = Index,
    };

    private const string Index = "an index, 0 to 10, such as 0.95";

    /// <summary>Greatest share of tasks without predecessor or successor.</summary>
    public decimal Logic { get; init; } = 0.05m;

    /// <summary>Greatest share of links with a lead.</summary>
    public decimal Leads { get; init; }

    /// <summary>Greatest share of links with a lag.</summary>
    public decimal Lags { get; init; } = 0.05m;

    /// <summary>Least share of finish-to-start links.</summary>
    public decimal FinishToStart { get; init; } = 0.90m;

    public decimal HardConditions { get; init; } = 0.05m;

    public decimal HighFloat { get; init; } = 0.05m;

    /// <summary>Total float beyond which it is high, in working days.</summary>
    public int FloatDays { get; init; } = 44;

    public decimal NegativeFloat { get; init; }

    public decimal HighDuration { get; init; } = 0.05m;

    /// <summary>Duration beyond which it is high, in working days.</summary>
    public int DurationDays { get; init; } = 44;

    /// <summary>
    /// The detailed planning window: durations are looked at where the baseline start lies within so many working days after
    /// the status date; null for all.
    /// </summary>
    public int? WindowDays { get; init; }

    public decimal InvalidDates { get; init; }

    /// <summary>Greatest share of tasks without hours and money; null where loading is not required.</summary>
    public decimal? Resources { get; init; }

    public decimal Missed { get; init; } = 0.05m;

    /// <summary>The delay that the critical path test puts in, in working days.</summary>
    public int DelayDays { get; init; } = 600;

    /// <summary>Least critical path length index.</summary>
    public decimal PathIndex { get; init; } = 0.95m;

    /// <summary>Least baseline execution index.</summary>
    public decimal ExecutionIndex { get; init; } = 0.95m;

    /// <summary>The limits with one of them set; null where the value is not understood.</summary>
    public AssessmentLimits? With(string key, string value) =>
        key.EndsWith("_days", StringComparison.Ordinal) ? WithDays(key, value)
        : key.EndsWith("_index", StringComparison.Ordinal) ? WithIndex(key, value)
        : WithShare(key, value);

    private AssessmentLimits? WithDays(string key, string value)
    {
        if (
            !int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var days)
            || days > ActivityTable.LongestDuration
        )
        {
            return null;
        }

        return key switch
        {
            "assess_float_days" => this with { FloatDays = days },
            "assess_duration_days" => this with { DurationDays = days },
            "assess_window_days" => this with { WindowDays = days },
            _ => days == 0 ? null : this with { DelayDays = days },
        };
    }

    private AssessmentLimits? WithIndex(string key, string value) =>
        Number(value) is not { } index || index > 10 ? null
        : key == "assess_path_index" ? this with { PathIndex = index }
        : this with { ExecutionIndex = index };

    private AssessmentLimits? WithShare(string key, string value)
    {
        if (Number(value) is not { } percent || percent > 100)
        {
            return null;
        }

        var share = percent / 100;
        return key switch
        {
            "assess_logic" => this with { Logic = share },
            "assess_leads" => this with { Leads = share },
            "assess_lags" => this with { Lags = share },
            "assess_finish_to_start" => this with { FinishToStart = share },
            "assess_hard_conditions" => this with { HardConditions = share },
            "assess_high_float" => this with { HighFloat = share },
            "assess_negative_float" => this with { NegativeFloat = share },
            "assess_high_duration" => this with { HighDuration = share },
            "assess_invalid_dates" => this with { InvalidDates = share },
            "assess_resources" => this with { Resources = share },
            _ => this with { Missed = share },
        };
    }

    private static decimal? Number(string value) =>
        value.Length <= 20
        && decimal.TryParse(
            value,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? number
            : null;

    private static string Percent(int usual) =>
        string.Create(CultureInfo.InvariantCulture, $"per cent, 0 to 100, such as {usual}");

    private static string Days(int usual) =>
        string.Create(CultureInfo.InvariantCulture, $"whole working days, such as {usual}");
}
