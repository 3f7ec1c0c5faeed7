namespace Plenum.Core.Accounts.Precision;

/// <summary>A part of the error of a row: of packages whose progress is decided by one package.</summary>
/// <param name="Package">The package that decides: itself, or the base of apportioned effort.</param>
/// <param name="Error">Its error together with that of what follows it, in minor units.</param>
/// <param name="Buys">By how much the size of the row's error would fall if this part were known, in minor units.</param>
public readonly record struct ErrorPart(int Package, StatusError Error, double Buys);

/// <summary>The error of earned value of a row at a period's end, with its parts in order of what they would buy.</summary>
public sealed record RowError(StatusError Error, IReadOnlyList<ErrorPart> Parts)
{
    public static RowError Nothing { get; } = new(default, []);

    /// <summary>From the errors of the parts, in any order.</summary>
    public static RowError Of(IEnumerable<(int Package, StatusError Error)> parts)
    {
        var known = parts.ToList();
        if (known.Count == 0)
        {
            return Nothing;
        }

        var bias = 0.0;
        var squares = 0.0;
        var worst = 0.0;
        foreach (var (_, error) in known)
        {
            bias += error.Bias;
            squares += error.Spread * error.Spread;
            worst += error.Worst;
        }

        var whole = new StatusError(bias, Math.Sqrt(squares), worst);
        return new RowError(
            whole,
            [
                .. known
                    .Select(part => new ErrorPart(
                        part.Package,
                        part.Error,
                        whole.Size - SizeWithout(bias, squares, part.Error)
                    ))
                    .OrderByDescending(part => part.Buys)
                    .ThenBy(part => part.Package),
            ]
        );
    }

    /// <summary>
    /// Half the width of the interval that holds the true value with a chance of 95 %, about earned value less its
    /// bias. For one uniform error it is 0.95 of the greatest; for many it is 1.96 spreads; between, the exact values
    /// for one, two and three equal parts and for very many are read along the kurtosis of the sum. Own definition.
    /// </summary>
    public double HalfWidth
    {
        get
        {
            var squares = 0.0;
            var fourths = 0.0;
            foreach (var part in Parts)
            {
                var square = part.Error.Spread * part.Error.Spread;
                squares += square;
                fourths += square * square;
            }

            return squares == 0 ? 0 : Quantile(fourths / (squares * squares)) * Math.Sqrt(squares);
        }
    }

    /// <summary>
    /// The 95 % half width in spreads. The argument is 1 over the number of parts, if they are equal: for uniform
    /// parts the excess kurtosis of the sum is −1.2 times it.
    /// </summary>
    private static double Quantile(double concentration)
    {
        // one: 0.95 √3; two: (1 − √0.05) √6; three: (1.5 − ∛0.15) 2; very many: 1.96
        ReadOnlySpan<(double At, double Value)> points =
        [
            (0, 1.959964),
            (1.0 / 3, 1.937341),
            (0.5, 1.901766),
            (1, 1.645448),
        ];
        for (var i = 1; i < points.Length; i++)
        {
            if (concentration <= points[i].At)
            {
                var part = (concentration - points[i - 1].At) / (points[i].At - points[i - 1].At);
                return points[i - 1].Value + (part * (points[i].Value - points[i - 1].Value));
            }
        }

        return points[^1].Value;
    }

    private static double SizeWithout(double bias, double squares, StatusError part)
    {
        var restBias = bias - part.Bias;
        var restSquares = Math.Max(0, squares - (part.Spread * part.Spread));
        return Math.Sqrt((restBias * restBias) + restSquares);
    }
}
