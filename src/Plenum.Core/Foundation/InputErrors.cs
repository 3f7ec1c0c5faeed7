namespace Plenum.Core.Foundation;

/// <summary>
/// Collects what is wrong with an input. Keeps the first <see cref="Kept"/> errors and counts them all, so that a
/// file with a million errors costs no more memory than one with a thousand.
/// </summary>
public sealed class InputErrors
{
    /// <summary>How many errors are kept in full.</summary>
    public const int Kept = 1_000;

    private const int LongestValue = 80;

    private readonly List<InputError> errors = [];

    /// <summary>How many errors there are, kept or not.</summary>
    public long Count { get; private set; }

    public bool Any => Count > 0;

    /// <summary>Further errors are only counted.</summary>
    public bool IsFull => Count >= Kept;

    /// <summary>The errors that were kept, in the order in which they were found.</summary>
    public IReadOnlyList<InputError> Items => errors;

    public void Add(
        string file,
        int? row,
        string? column,
        ReadOnlySpan<char> value,
        string expected,
        string? message = null
    )
    {
        Count++;
        if (errors.Count >= Kept)
        {
            return;
        }

        var shown = Shorten(value);
        errors.Add(
            new InputError(
                file,
                row,
                column,
                shown,
                expected,
                message ?? $"\"{shown}\" found, {expected} expected"
            )
        );
    }

    public void Add(string file, string expected, string message)
    {
        Count++;
        if (errors.Count < Kept)
        {
            errors.Add(new InputError(file, null, null, null, expected, message));
        }
    }

    /// <summary>A value as an error shows it: cut after 80 characters.</summary>
    public static string Shorten(ReadOnlySpan<char> value) =>
        value.Length <= LongestValue ? value.ToString() : string.Concat(value[..LongestValue], "…");
}
