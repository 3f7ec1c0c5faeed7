using System.Globalization;

namespace Plenum.Core.Foundation;

/// <summary>
/// How much it takes before a rule of the audit finds something. Each is a default that a project can change by a key;
/// where the default comes from stands with the rule in docs/audit.md.
/// </summary>
public sealed record AuditThresholds
{
    /// <summary>The keys, with what is expected of their values.</summary>
    public static readonly IReadOnlyDictionary<string, string> Keys = new Dictionary<
        string,
        string
    >(StringComparer.Ordinal)
    {
        ["audit_levels_least"] = "levels, 1 to 20",
        ["audit_levels_most"] = "levels, 1 to 20",
        ["audit_loe_share"] = "per cent of the budget, 0 to 100, such as 15",
        ["audit_silent_periods"] = "periods, 0 to 100",
        ["audit_package_periods"] = "periods, 1 to 100",
        ["audit_package_share"] = "per cent of the project's budget, 0 to 100, such as 5",
        ["audit_package_hours"] = "hours, 0 to 1000",
        ["audit_account_packages"] = "packages, 1 to 10000",
        ["audit_account_share"] = "per cent of the project's budget, 0 to 100, such as 10",
        ["audit_sisters_share"] = "per cent of the sisters, 50 to 100, such as 75",
        ["audit_sisters_hours"] = "times the usual hours, 2 to 100",
        ["audit_late_days"] = "working days, 0 to 1000",
        ["audit_late_followers"] = "per cent of the packages, 0 to 100, such as 5",
        ["audit_index_lead"] = "hundredths of an index, 0 to 100, such as 5",
        ["audit_estimate_share"] = "per cent of the rest of the budget, 0 to 100, such as 50",
        ["assessor_error"] = "per cent of a package's budget, 0 to 100, such as 10",
    };

    public int FewestLevels { get; init; } = 3;

    public int MostLevels { get; init; } = 6;

    /// <summary>Share of the budget that may be level of effort.</summary>
    public Fraction LevelOfEffort { get; init; } = new(1_500);

    /// <summary>For so many periods an open package may say nothing.</summary>
    public int SilentPeriods { get; init; } = 2;

    /// <summary>Over so many periods a package may run without steps that can be counted.</summary>
    public int PackagePeriods { get; init; } = 2;

    /// <summary>Share of the project's budget that a package may have.</summary>
    public Fraction PackageShare { get; init; } = new(500);

    /// <summary>A package has at least so many hours, if it has hours.</summary>
    public int PackageHours { get; init; } = 8;

    public int AccountPackages { get; init; } = 100;

    /// <summary>Share of the project's budget that an account may have.</summary>
    public Fraction AccountShare { get; init; } = new(1_000);

    /// <summary>What so many of the sisters have is expected of all.</summary>
    public Fraction SistersShare { get; init; } = new(7_500);

    /// <summary>A sister has at most so many times the usual hours, and at least one in so many of them.</summary>
    public int SistersHours { get; init; } = 3;

    /// <summary>Remaining work may lead so many working days beyond the baseline finish.</summary>
    public int LateDays { get; init; } = 20;

    /// <summary>Share of the packages that come after work whose lateness is told.</summary>
    public Fraction LateFollowers { get; init; } = new(500);

    /// <summary>The efficiency that an estimate needs may be so many hundredths above the one so far.</summary>
    public int IndexLead { get; init; } = 5;

    /// <summary>Cost still to come is at least this share of what is still to be earned.</summary>
    public Fraction EstimateShare { get; init; } = new(5_000);

    /// <summary>Greatest error of a percent complete that a person has judged, as a share of the package's budget.</summary>
    public Fraction AssessorError { get; init; } = new(1_000);

    /// <summary>The thresholds with one changed; null if the value is not as expected.</summary>
    public AuditThresholds? With(string key, string value) =>
        key switch
        {
            "audit_levels_least" => Whole(value, 1, 20) is { } n
                ? this with
                {
                    FewestLevels = n,
                }
                : null,
            "audit_levels_most" => Whole(value, 1, 20) is { } n
                ? this with
                {
                    MostLevels = n,
                }
                : null,
            "audit_loe_share" => Percent(value, 0) is { } p
                ? this with
                {
                    LevelOfEffort = p,
                }
                : null,
            "audit_silent_periods" => Whole(value, 0, 100) is { } n
                ? this with
                {
                    SilentPeriods = n,
                }
                : null,
            "audit_package_periods" => Whole(value, 1, 100) is { } n
                ? this with
                {
                    PackagePeriods = n,
                }
                : null,
            "audit_package_share" => Percent(value, 0) is { } p
                ? this with
                {
                    PackageShare = p,
                }
                : null,
            "audit_package_hours" => Whole(value, 0, 1000) is { } n
                ? this with
                {
                    PackageHours = n,
                }
                : null,
            "audit_account_packages" => Whole(value, 1, 10_000) is { } n
                ? this with
                {
                    AccountPackages = n,
                }
                : null,
            "audit_account_share" => Percent(value, 0) is { } p
                ? this with
                {
                    AccountShare = p,
                }
                : null,
            "audit_sisters_share" => Percent(value, 50) is { } p
                ? this with
                {
                    SistersShare = p,
                }
                : null,
            "audit_sisters_hours" => Whole(value, 2, 100) is { } n
                ? this with
                {
                    SistersHours = n,
                }
                : null,
            "audit_late_days" => Whole(value, 0, 1000) is { } n ? this with { LateDays = n } : null,
            "audit_late_followers" => Percent(value, 0) is { } p
                ? this with
                {
                    LateFollowers = p,
                }
                : null,
            "audit_index_lead" => Whole(value, 0, 100) is { } n
                ? this with
                {
                    IndexLead = n,
                }
                : null,
            "audit_estimate_share" => Percent(value, 0) is { } p
                ? this with
                {
                    EstimateShare = p,
                }
                : null,
            "assessor_error" => Percent(value, 0) is { } p ? this with { AssessorError = p } : null,
            _ => null,
        };

    private static int? Whole(string value, int least, int most) =>
        int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number >= least
        && number <= most
            ? number
            : null;

    private static Fraction? Percent(string value, int least) =>
        Fraction.TryParsePercent(value) is { } share && share.BasisPoints >= least * 100
            ? share
            : null;
}
