namespace Plenum.Web.Shell;

/// <summary>A chapter of the job with its place in it, 1 to 12.</summary>
/// <param name="Number">Its number, the same in rail, title block and keys.</param>
/// <param name="Name">Its name.</param>
/// <param name="Word">Its word in addresses.</param>
public sealed record Chapter(int Number, string Name, string Word)
{
    /// <summary>The key that opens it together with Alt.</summary>
    public string Key =>
        Number switch
        {
            10 => "0",
            11 => "-",
            12 => "=",
            _ => Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
        };
}

/// <summary>The chapters that have a sheet so far.</summary>
public static class Chapters
{
    /// <summary>Number of chapters of the whole job.</summary>
    public const int OfTheJob = 12;

    public static readonly IReadOnlyList<Chapter> All =
    [
        new(1, "Scope", "scope"),
        new(2, "Breakdown", "breakdown"),
        new(3, "People", "people"),
        new(4, "Estimate", "estimate"),
        new(5, "Network", "network"),
        new(8, "Accounts", "accounts"),
    ];

    public static Chapter? Of(string word) => All.FirstOrDefault(chapter => chapter.Word == word);
}
