using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>The favourable and the unfavourable sum of a row's variances (the second is negative or zero), and how much they cancel.</summary>
public sealed record Offsets(BigInteger Favourable, BigInteger Unfavourable, Ratio? Masking)
{
    /// <summary>masking = 1 - |net| / (favourable + |unfavourable|).</summary>
    public static Offsets Of(IEnumerable<BigInteger> variances)
    {
        var favourable = BigInteger.Zero;
        var unfavourable = BigInteger.Zero;
        foreach (var variance in variances)
        {
            favourable += variance.Sign > 0 ? variance : 0;
            unfavourable += variance.Sign < 0 ? variance : 0;
        }

        var net = BigInteger.Abs(favourable + unfavourable);
        var share = Ratio.Quotient(net, favourable + BigInteger.Abs(unfavourable));
        return new Offsets(favourable, unfavourable, share is null ? null : Ratio.One - share);
    }
}
