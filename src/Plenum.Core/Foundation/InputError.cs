namespace Plenum.Core.Foundation;

/// <summary>
/// One thing that is wrong with what a person brought: where it stands, what was found, what was expected.
/// </summary>
/// <param name="File">The file's name with its extension; for a workbook the file and the sheet.</param>
/// <param name="Row">
/// The row as a spreadsheet counts it (the header is row 1); null where the whole file is meant.
/// </param>
/// <param name="Column">The column's heading; null where the whole row is meant.</param>
/// <param name="Value">The cell as it was found, cut after 80 characters; null where there is none.</param>
/// <param name="Expected">What would have been right, in plain words.</param>
/// <param name="Message">The whole complaint as one sentence that a person can act on.</param>
public sealed record InputError(
    string File,
    int? Row,
    string? Column,
    string? Value,
    string Expected,
    string Message
)
{
    public override string ToString()
    {
        var place = Row is { } row ? $"{File}, row {row}" : File;
        return Column is null ? $"{place}: {Message}" : $"{place}, column {Column}: {Message}";
    }
}
