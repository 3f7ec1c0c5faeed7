namespace Plenum.Web.Accounts;

/// <summary>The part of the plane of schedule (across) and cost (up) efficiency that a plot shows.</summary>
/// <param name="Left">Least SPI.</param>
/// <param name="Right">Greatest SPI.</param>
/// <param name="Bottom">Least CPI.</param>
/// <param name="Top">Greatest CPI.</param>
public readonly record struct PlotScale(double Left, double Right, double Bottom, double Top)
{
    public const double Width = 392;
    public const double Height = 262;

    /// <summary>Holds nearly all points with some air, and 1.00 both ways; the few beyond are drawn at the edge.</summary>
    public static PlotScale Around(IReadOnlyCollection<(double Spi, double Cpi)> points)
    {
        if (points.Count == 0)
        {
            return new PlotScale(0.7, 1.3, 0.7, 1.3);
        }

        var spi = points.Select(point => point.Spi).Order().ToList();
        var cpi = points.Select(point => point.Cpi).Order().ToList();
        // one in fifty at each end does not squeeze the others
        var few = points.Count / 50;
        var left = Math.Clamp(spi[few], 0.4, 0.96);
        var right = Math.Clamp(spi[^(few + 1)], 1.04, 1.8);
        var bottom = Math.Clamp(cpi[few], 0.4, 0.96);
        var top = Math.Clamp(cpi[^(few + 1)], 1.04, 1.8);
        var across = (right - left) * 0.06;
        var up = (top - bottom) * 0.06;
        return new PlotScale(left - across, right + across, bottom - up, top + up);
    }

    public double X(double spi) => Math.Clamp((spi - Left) / (Right - Left), 0, 1) * Width;

    public double Y(double cpi) =>
        Height - (Math.Clamp((cpi - Bottom) / (Top - Bottom), 0, 1) * Height);

    /// <summary>Closer around a place of the plot, 0 to 1 across and up.</summary>
    public PlotScale Closer(double across, double up, double factor)
    {
        var x = Left + (across * (Right - Left));
        var y = Bottom + (up * (Top - Bottom));
        return new PlotScale(
            x - ((x - Left) / factor),
            x + ((Right - x) / factor),
            y - ((y - Bottom) / factor),
            y + ((Top - y) / factor)
        );
    }

    /// <summary>Round values for an axis.</summary>
    public static IEnumerable<double> Ticks(double from, double to)
    {
        double[] steps = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5];
        var step = steps.First(known => (to - from) / known <= 6 || known == steps[^1]);
        for (var value = Math.Ceiling(from / step) * step; value <= to + 1e-9; value += step)
        {
            yield return Math.Round(value, 3);
        }
    }
}
