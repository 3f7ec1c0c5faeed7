using System.Globalization;

namespace Plenum.Samples.Demo.Plant;

/// <summary>Reads the plain tables in which the plant is written down: a row a line, cells between bars.</summary>
internal static class PlantText
{
    public static IEnumerable<string> Lines(string text)
    {
        foreach (var line in text.Split('\n'))
        {
            var trimmed = line.Trim();
            if (trimmed.Length > 0)
            {
                yield return trimmed;
            }
        }
    }

    /// <summary>The line's cells; those left out at the end are empty.</summary>
    public static string[] Cells(string line, int count)
    {
        var cells = new string[count];
        Array.Fill(cells, "");
        var found = line.Split('|', StringSplitOptions.TrimEntries);
        if (found.Length > count)
        {
            throw new FormatException($"More than {count} cells: {line}");
        }
        found.CopyTo(cells, 0);
        return cells;
    }

    public static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>An amount written in millions as a count of minor units (hundredths).</summary>
    public static long Millions(string text) =>
        (long)(decimal.Parse(text, CultureInfo.InvariantCulture) * 100_000_000m);

    public static DateOnly Date(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
