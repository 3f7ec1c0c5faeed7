namespace Plenum.Core.Accounts.Precision;

/// <summary>A part of the error of a row: of packages whose progress is decided by one package.</summary>
/// <param name="Package">The package that decides: itself, or the base of apportioned effort.</param>
/// <param name="Error">Its error together with that of what follows it, in minor units.</param>
/// <param name="Buys">By how much the size of the row's error would fall if this part were known, in minor units.</param>
public readonly record struct ErrorPart(int Package, StatusError Error, double Buys);

/// <summary>The error of earned value of a row at a period's end, with its parts in order of what they would buy.</summary>
public sealed class RowError
{
    private readonly (int Package, StatusError Error)[] known;
    private readonly double bias;
    private readonly double squares;
    private IReadOnlyList<ErrorPart>? parts;

    private RowError((int Package, StatusError Error)[] known)
    {
        this.known = known;
        var worst = 0.0;
        foreach (var (_, error) in known)
        {
            bias += error.Bias;
            squares += error.Spread * error.Spread;
            worst += error.Worst;
        }

        Error = new StatusError(bias, Math.Sqrt(squares), worst);
    }

    public static RowError Nothing { get; } = new([]);

    public StatusError Error { get; }

    /// <summary>Number of parts.</summary>
    public int Count => known.Length;

    /// <summary>The parts, that which would buy most first; put in order when they are first asked for.</summary>
    public IReadOnlyList<ErrorPart> Parts =>
        parts ??= [
            .. known
                .Select(part => new ErrorPart(part.Package, part.Error, Buys(part.Error)))
                .OrderByDescending(part => part.Buys)
                .ThenBy(part => part.Package),
        ];

    /// <summary>From the errors of the parts, in any order.</summary>
    public static RowError Of(IEnumerable<(int Package, StatusError Error)> parts) =>
        parts.ToArray() is { Length: > 0 } known ? new RowError(known) : Nothing;

    /// <summary>
    /// The parts that must be known until the size of the rest is under a limit, in minor units: each time the one that
    /// buys most of what is left. Time: parts × parts of the answer.
    /// </summary>
    public IReadOnlyList<ErrorPart> ToKnowUntil(double limit)
    {
        List<ErrorPart> taken = [];
        List<(int Package, StatusError Error)> left = [.. known];
        var rest = this;
        while (left.Count > 0 && rest.Error.Size >= limit)
        {
            var best = 0;
            var buys = double.NegativeInfinity;
            for (var part = 0; part < left.Count; part++)
            {
                var own = rest.Buys(left[part].Error);
                if (own > buys || (own == buys && left[part].Package < left[best].Package))
                {
                    (best, buys) = (part, own);
                }
            }

            taken.Add(new ErrorPart(left[best].Package, left[best].Error, buys));
            left.RemoveAt(best);
            rest = Of(left);
        }

        return taken;
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
            var fourths = 0.0;
            foreach (var (_, error) in known)
            {
                var square = error.Spread * error.Spread;
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

    private double Buys(StatusError part)
    {
        var restBias = bias - part.Bias;
        var restSquares = Math.Max(0, squares - (part.Spread * part.Spread));
        return Error.Size - Math.Sqrt((restBias * restBias) + restSquares);
    }
}
