using System.Globalization;

namespace Plenum.Bench.Harness;

/// <summary>
/// Stands for an answer of many numbers: the sum of each times a weight that depends on its place, so that no two
/// answers which differ in one place agree. The same sum is easily asked for in SQL, see <see cref="Sql"/>.
/// </summary>
internal static class Checksum
{
    private const int Weights = 1009;

    public static string Of(params ReadOnlySpan<long[]> columns)
    {
        var sums = new string[columns.Length];
        for (var column = 0; column < sums.Length; column++)
        {
            Int128 sum = 0;
            var values = columns[column];
            for (var row = 0; row < values.Length; row++)
            {
                sum += values[row] * (long)((row % Weights) + 1);
            }

            sums[column] = sum.ToString(CultureInfo.InvariantCulture);
        }

        return string.Join(' ', sums);
    }

    /// <summary>The same sum of a column whose place, from 0, is given by another expression.</summary>
    public static string Sql(string value, string place) =>
        $"CAST(sum({value} * ({place} % {Weights} + 1)) AS VARCHAR)";
}
