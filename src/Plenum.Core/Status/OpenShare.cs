namespace Plenum.Core.Status;

/// <summary>
/// How far the earned share of a package may be from its true progress, as fractions of its budget, when the true
/// progress is uniform over what the technique leaves open. Source: own definition.
/// </summary>
/// <param name="Bias">Mean of earned less true.</param>
/// <param name="Spread">Standard deviation.</param>
/// <param name="Worst">Greatest distance either way.</param>
public readonly record struct OpenShare(double Bias, double Spread, double Worst)
{
    private static readonly double OfUniform = Math.Sqrt(12);

    /// <summary>The progress is known.</summary>
    public static OpenShare None => default;

    /// <summary>
    /// A share is earned at the start and the rest at the finish: a when the technique is a/b. 50/50 gives bias 0,
    /// spread 0.289 and worst 0.5.
    /// </summary>
    public static OpenShare StartFinish(double earned) =>
        new(earned - 0.5, 1 / OfUniform, Math.Max(earned, 1 - earned));

    /// <summary>
    /// Nothing is earned until the next milestone, step or unit is there, which earns so much. A weight of 0.2 gives
    /// bias −0.1, spread 0.058 and worst 0.2.
    /// </summary>
    public static OpenShare Step(double weight) => new(-weight / 2, weight / OfUniform, weight);

    /// <summary>
    /// A person judges, and is off by so much at most, either way. An error of 0.1 gives bias 0, spread 0.058 and
    /// worst 0.1.
    /// </summary>
    public static OpenShare Judged(double error) => new(0, error / Math.Sqrt(3), error);
}
