using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Numerics;

namespace Plenum.Cli;

/// <summary>Arguments and options that several commands share.</summary>
internal static class CommonOptions
{
    public static readonly Argument<FileInfo> Project = new("PROJECT")
    {
        Description = "The project: a .plenum file.",
    };

    public static readonly Option<bool> Json = new("--json")
    {
        Description = "Answer with one JSON document.",
        Recursive = true,
    };

    public static readonly Option<string?> At = new("--at")
    {
        Description =
            "Everything is taken at the last period end on or before this date (2026-03-31).",
        HelpName = "DATE",
    };

    public static readonly Option<string> By = new("--by")
    {
        Description = "account, element, unit, cost_element, package, or the name of a grouping.",
        DefaultValueFactory = _ => "account",
        HelpName = "CUT",
    };

    public static readonly Option<string?> Under = new("--under")
    {
        Description = "Only this element and what is under it.",
        HelpName = "CODE",
    };

    public static readonly Option<int?> Level = new("--level")
    {
        Description = "Level; the root is 1.",
        HelpName = "N",
        CustomParser = WholeNumber(
            1,
            int.MaxValue,
            "--level takes a whole number from 1, the root."
        ),
    };

    /// <summary>Reads a whole number within bounds, and says in plain words what is expected.</summary>
    public static Func<ArgumentResult, T?> WholeNumber<T>(T least, T greatest, string expected)
        where T : struct, IBinaryInteger<T> =>
        result =>
        {
            if (
                T.TryParse(
                    result.Tokens[0].Value,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var number
                )
                && number >= least
                && number <= greatest
            )
            {
                return number;
            }

            result.AddError(expected);
            return null;
        };
}
