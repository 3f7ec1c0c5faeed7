namespace Plenum.Samples.Foundation;

/// <summary>How a budget is spread over the working days from start to finish.</summary>
internal static class Spreads
{
    /// <summary>The share that is planned once a share x of the days has passed, both 0 to 1.</summary>
    public static double Share(string spread, double x) =>
        spread switch
        {
            "falling" => 1 - ((1 - x) * (1 - x)),
            "rising" => x * x,
            "s_shaped" or "periods" => x * x * (3 - (2 * x)),
            _ => x,
        };
}
