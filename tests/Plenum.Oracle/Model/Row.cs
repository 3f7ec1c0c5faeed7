using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>
/// A row of the accounts answer. Money in minor units, ratios and earned schedule exact, null where undefined.
/// </summary>
public sealed record Row
{
    public required string Code { get; init; }
    public required string Name { get; init; }
    public required BigInteger Bac { get; init; }
    public required BigInteger Pv { get; init; }
    public required BigInteger Ev { get; init; }
    public required BigInteger Ac { get; init; }
    public required BigInteger Committed { get; init; }
    public required BigInteger Sv { get; init; }
    public required BigInteger Cv { get; init; }
    public required Ratio? Spi { get; init; }
    public required Ratio? Cpi { get; init; }
    public required Ratio? PercentComplete { get; init; }
    public required Ratio? PercentSpent { get; init; }
    public required BigInteger Etc { get; init; }
    public required BigInteger Eac { get; init; }
    public required BigInteger Vac { get; init; }
    public required BigInteger EacPlan { get; init; }
    public required BigInteger? EacCpi { get; init; }
    public required BigInteger? EacCpiSpi { get; init; }
    public required BigInteger? EacCpi3 { get; init; }
    public required Ratio? TcpiBac { get; init; }
    public required Ratio? TcpiEac { get; init; }
    public required Ratio? Es { get; init; }
    public required int? AtPeriods { get; init; }
    public required Ratio? SpiT { get; init; }
    public required DateOnly? ForecastFinish { get; init; }
    public required BigInteger CvFavourable { get; init; }
    public required BigInteger CvUnfavourable { get; init; }
    public required Ratio? CvMasking { get; init; }
    public required BigInteger SvFavourable { get; init; }
    public required BigInteger SvUnfavourable { get; init; }
    public required Ratio? SvMasking { get; init; }

    /// <summary>The measures that are amounts of money, by the names of the answer's columns.</summary>
    public static IReadOnlyList<string> MoneyMeasures { get; } =
    [
        "bac",
        "pv",
        "ev",
        "ac",
        "committed",
        "sv",
        "cv",
        "etc",
        "eac",
        "vac",
        "eac_plan",
        "eac_cpi",
        "eac_cpi_spi",
        "eac_cpi3",
        "cv_favourable",
        "cv_unfavourable",
        "sv_favourable",
        "sv_unfavourable",
    ];

    /// <summary>The measures that are fractions, indices or numbers of periods.</summary>
    public static IReadOnlyList<string> RatioMeasures { get; } =
    [
        "spi",
        "cpi",
        "percent_complete",
        "percent_spent",
        "tcpi_bac",
        "tcpi_eac",
        "es",
        "at_periods",
        "spi_t",
        "cv_masking",
        "sv_masking",
    ];

    /// <summary>An amount in minor units by the name of its column.</summary>
    public BigInteger? Money(string measure) =>
        measure switch
        {
            "bac" => Bac,
            "pv" => Pv,
            "ev" => Ev,
            "ac" => Ac,
            "committed" => Committed,
            "sv" => Sv,
            "cv" => Cv,
            "etc" => Etc,
            "eac" => Eac,
            "vac" => Vac,
            "eac_plan" => EacPlan,
            "eac_cpi" => EacCpi,
            "eac_cpi_spi" => EacCpiSpi,
            "eac_cpi3" => EacCpi3,
            "cv_favourable" => CvFavourable,
            "cv_unfavourable" => CvUnfavourable,
            "sv_favourable" => SvFavourable,
            "sv_unfavourable" => SvUnfavourable,
            _ => throw new ArgumentException($"{measure} is no amount.", nameof(measure)),
        };

    /// <summary>A fraction, index or number of periods by the name of its column.</summary>
    public Ratio? Ratio(string measure) =>
        measure switch
        {
            "spi" => Spi,
            "cpi" => Cpi,
            "percent_complete" => PercentComplete,
            "percent_spent" => PercentSpent,
            "tcpi_bac" => TcpiBac,
            "tcpi_eac" => TcpiEac,
            "es" => Es,
            "at_periods" => AtPeriods is { } periods ? Model.Ratio.Of(periods) : null,
            "spi_t" => SpiT,
            "cv_masking" => CvMasking,
            "sv_masking" => SvMasking,
            _ => throw new ArgumentException($"{measure} is no ratio.", nameof(measure)),
        };

    /// <summary>Whether any measure differs from zero: a row named with an asterisk is given only then.</summary>
    public bool SaysSomething =>
        MoneyMeasures.Any(measure => Money(measure) is { IsZero: false })
        || RatioMeasures.Any(measure => Ratio(measure) is { Numerator.IsZero: false });
}
