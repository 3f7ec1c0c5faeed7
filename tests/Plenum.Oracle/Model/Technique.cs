using System.Globalization;
using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>The techniques by which a package plans and earns, as they are written in the tables.</summary>
public static class Technique
{
    public const string None = "";
    public const string Milestones = "milestones";
    public const string Percent = "percent";
    public const string Units = "units";
    public const string Items = "items";
    public const string LevelOfEffort = "loe";
    public const string Apportioned = "apportioned";

    /// <summary>The share that a technique a/b earns at the start (0/100: none); null for every other technique.</summary>
    public static Ratio? ShareAtStart(string technique)
    {
        var stroke = technique.IndexOf('/', StringComparison.Ordinal);
        return stroke < 0
            ? null
            : new Ratio(BigInteger.Parse(technique[..stroke], CultureInfo.InvariantCulture), 100);
    }
}
