namespace Plenum.Core.Accounts.Precision;

/// <summary>
/// What can be told of a variance when earned value is known only so well: planned value and actual cost are taken as
/// exact. Amounts in minor units. Source: own definition.
/// </summary>
/// <param name="Variance">As measured: CV or SV.</param>
/// <param name="Low">The true one is above this with a chance of 97.5 %.</param>
/// <param name="High">The true one is below this with a chance of 97.5 %.</param>
public readonly record struct VarianceCertainty(long Variance, double Low, double High)
{
    /// <summary>The true variance is not zero, with a chance of 95 % or more; an exact variance of zero is zero.</summary>
    public bool IsToldFromZero => Low > 0 || High < 0;

    /// <summary>The true variance is told to have the other sign: what is measured comes from the techniques' bias.</summary>
    public bool HasOtherSign => (Low > 0 && Variance < 0) || (High < 0 && Variance > 0);

    /// <summary>Signal: it can be told from zero, with its sign, and is beyond the threshold.</summary>
    public bool NeedsExplanation(long threshold) =>
        IsToldFromZero && !HasOtherSign && Math.Abs(Variance) > threshold;

    public static VarianceCertainty Of(long variance, RowError error)
    {
        var middle = variance - error.Error.Bias;
        return new VarianceCertainty(variance, middle - error.HalfWidth, middle + error.HalfWidth);
    }
}
