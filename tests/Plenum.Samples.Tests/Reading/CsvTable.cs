using System.Globalization;
using System.Text;

namespace Plenum.Samples.Tests.Reading;

/// <summary>One row of a table; a cell that is empty or whose column is missing reads as "".</summary>
internal sealed class CsvRow(CsvTable table, string[] cells, int number)
{
    public int Number => number;

    public string this[string column] =>
        table.Columns.TryGetValue(column, out var at) ? cells[at] : "";

    public bool Has(string column) => this[column].Length > 0;

    public decimal Decimal(string column) =>
        decimal.Parse(this[column], NumberStyles.Number, CultureInfo.InvariantCulture);

    public decimal DecimalOrZero(string column) => Has(column) ? Decimal(column) : 0;

    public DateOnly Date(string column) =>
        DateOnly.ParseExact(this[column], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public DateOnly? DateOrNone(string column) =>
        Has(column) && this[column] != "-" ? Date(column) : null;

    public override string ToString() => $"{table.Name}, row {number}";
}

/// <summary>A table read whole from a CSV file after RFC 4180, written apart from anything that Plenum reads with.</summary>
internal sealed class CsvTable
{
    private CsvTable(string name) => Name = name;

    public string Name { get; }

    public Dictionary<string, int> Columns { get; } = new(StringComparer.Ordinal);

    public List<CsvRow> Rows { get; } = [];

    public static CsvTable Read(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var table = new CsvTable(Path.GetFileNameWithoutExtension(path));
        var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        var number = 0;
        foreach (var record in Records(text))
        {
            number++;
            if (number == 1)
            {
                for (var i = 0; i < record.Length; i++)
                {
                    table.Columns.Add(record[i], i);
                }
                continue;
            }
            if (record.Length != table.Columns.Count)
            {
                throw new FormatException($"{table.Name}, row {number}: {record.Length} cells");
            }
            table.Rows.Add(new CsvRow(table, record, number));
        }
        return table;
    }

    public static CsvTable Empty(string name) => new(name);

    private static IEnumerable<string[]> Records(string text)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted)
            {
                if (c != '"')
                {
                    cell.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
                continue;
            }
            switch (c)
            {
                case '"' when cell.Length == 0:
                    quoted = true;
                    break;
                case ',':
                    cells.Add(cell.ToString());
                    cell.Clear();
                    break;
                case '\n':
                    cells.Add(cell.ToString());
                    cell.Clear();
                    yield return cells.ToArray();
                    cells.Clear();
                    break;
                default:
                    cell.Append(c);
                    break;
            }
        }
        if (cells.Count > 0 || cell.Length > 0)
        {
            throw new FormatException("The last line does not end");
        }
    }
}
