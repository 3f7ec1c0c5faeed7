namespace Plenum.Core.Foundation;

/// <summary>
/// A currency of ISO 4217 with its number of minor-unit digits. Source of codes and digits: ISO 4217 list of active
/// currency codes (from memory). The default value is the first of the list and should not be relied upon.
/// </summary>
public readonly record struct Currency
{
    private const string NoDigits =
        "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
    private const string ThreeDigits = "BHD IQD JOD KWD LYD OMR TND";
    private const string FourDigits = "CLF UYW";
    private const string TwoDigits =
        "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF "
        + "CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD "
        + "HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT "
        + "MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR "
        + "SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU "
        + "UZS VED VES WST XCD XCG YER ZAR ZMW ZWG";

    private static readonly (string Code, int Digits)[] Known =
    [
        .. TwoDigits.Split(' ').Select(code => (code, 2)),
        .. NoDigits.Split(' ').Select(code => (code, 0)),
        .. ThreeDigits.Split(' ').Select(code => (code, 3)),
        .. FourDigits.Split(' ').Select(code => (code, 4)),
    ];

    private static readonly Dictionary<string, int> NumberByCode = Known
        .Select((currency, number) => (currency.Code, number))
        .ToDictionary(pair => pair.Code, pair => pair.number, StringComparer.Ordinal);

    private static readonly long[] PowerOfTen = [1, 10, 100, 1_000, 10_000];

    private Currency(int number) => Number = number;

    public static Currency Euro { get; } = Parse("EUR");

    /// <summary>Its place in Plenum's list; stable only within one run.</summary>
    public int Number { get; }

    /// <summary>Three capital letters, such as EUR.</summary>
    public string Code => Known[Number].Code;

    /// <summary>Decimals of an amount: 2 for EUR, 0 for JPY, 3 for KWD.</summary>
    public int Digits => Known[Number].Digits;

    public static Currency FromNumber(int number) => new(number);

    public static bool TryParse(ReadOnlySpan<char> code, out Currency currency)
    {
        var found = NumberByCode
            .GetAlternateLookup<ReadOnlySpan<char>>()
            .TryGetValue(code, out var number);
        currency = new Currency(found ? number : 0);
        return found;
    }

    public static Currency Parse(string code) =>
        TryParse(code, out var currency)
            ? currency
            : throw new FormatException($"\"{code}\" is not a currency code of ISO 4217");

    public decimal ToMajorUnits(long minorUnits)
    {
        var negative = minorUnits < 0;
        var magnitude = negative ? unchecked((ulong)-minorUnits) : (ulong)minorUnits; // two's complement is exact here
        return new decimal(
            unchecked((int)magnitude),
            unchecked((int)(magnitude >> 32)),
            0,
            negative,
            (byte)Digits
        );
    }

    /// <summary>
    /// What one minor unit of this currency is, at a rate of one to one, in minor units of another: 10 to the power
    /// of the difference of their digits.
    /// </summary>
    public ExactFraction MinorUnitsPer(Currency other) =>
        new(PowerOfTen[other.Digits], PowerOfTen[Digits]);

    public override string ToString() => Code;
}
