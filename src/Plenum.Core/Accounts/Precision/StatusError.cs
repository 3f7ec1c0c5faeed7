namespace Plenum.Core.Accounts.Precision;

/// <summary>
/// How far earned value may be from what the true progress is worth, in minor units. Biases and worst cases of packages
/// add, spreads add by root of squares. Source: own definition.
/// </summary>
public readonly record struct StatusError(double Bias, double Spread, double Worst)
{
    /// <summary>Root of the mean square of the error.</summary>
    public double Size => Math.Sqrt((Bias * Bias) + (Spread * Spread));
}
