using Plenum.Core.Foundation;

namespace Plenum.Exchange.Books;

/// <summary>A row of a sheet as it came back.</summary>
/// <param name="Row">Its number as a spreadsheet counts.</param>
/// <param name="Cells">Its cells by heading, in lower case; empty for nothing.</param>
public sealed record ReadBookRow(int Row, IReadOnlyDictionary<string, string> Cells)
{
    public string this[string heading] => Cells.GetValueOrDefault(heading, "");
}

/// <summary>A sheet as it came back.</summary>
/// <param name="Name">What stands on its tab.</param>
/// <param name="File">What errors call it.</param>
/// <param name="Headings">Its headings, in lower case.</param>
/// <param name="Rows">Its rows; empty ones are left out.</param>
public sealed record ReadBookSheet(
    string Name,
    string File,
    IReadOnlyList<string> Headings,
    IReadOnlyList<ReadBookRow> Rows
)
{
    public bool Has(string heading) => Headings.Contains(heading, StringComparer.Ordinal);
}

/// <summary>Reads a workbook that came back, sheet by sheet; sheets whose name begins with an underscore are passed over.</summary>
public static class BookReader
{
    /// <summary>What is wrong with the file, a sheet or a cell goes to the errors.</summary>
    public static IReadOnlyList<ReadBookSheet> Read(string file, InputErrors errors)
    {
        List<ReadBookSheet> sheets = [];
        foreach (var source in TableSource.Find([file], errors))
        {
            using var reader = source.Open(errors);
            if (reader is null)
            {
                continue;
            }

            string[] headings = [.. reader.Header.Select(Plain)];
            List<ReadBookRow> rows = [];
            while (reader.Read())
            {
                Dictionary<string, string> cells = new(StringComparer.Ordinal);
                for (var column = 0; column < headings.Length; column++)
                {
                    if (reader[column].Length > 0)
                    {
                        cells[headings[column]] = reader[column].ToString();
                    }
                }

                rows.Add(new ReadBookRow(reader.Row, cells));
            }

            sheets.Add(new ReadBookSheet(source.Table, source.File, headings, rows));
        }

        return sheets;
    }

    /// <summary>Upper and lower case of a heading do not matter.</summary>
    public static string Plain(string heading) => heading.ToLowerInvariant();
}
