using System.Globalization;
using ExcelDataReader;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Xlsx;

/// <summary>The rows of a sheet from the first on, as text; reports the cells that hold a formula or an error.</summary>
internal sealed class SheetRows(
    string file,
    IExcelDataReader cells,
    CellFaults faults,
    InputErrors errors
) : IDisposable
{
    /// <summary>How many rows a sheet has.</summary>
    public const int MostRows = 1_048_576;

    private readonly string[] values = new string[cells.FieldCount];

    public IReadOnlyList<string> Headings { get; set; } = [];

    public IReadOnlyList<string> Values => values;

    public int Row { get; private set; }

    /// <summary>Whether everything in the row at hand can be taken.</summary>
    public bool IsSound { get; private set; }

    public double Fraction => Math.Min(1, Row / (double)Math.Max(1, cells.RowCount));

    /// <summary>Goes to the next row, empty or not. Throws whatever the workbook's reader throws on damage.</summary>
    public bool Next()
    {
        if (!cells.Read())
        {
            ReportFaults(int.MaxValue - 1);
            return false;
        }

        Row++;
        if (Row > MostRows)
        {
            throw new InvalidDataException("More rows than a sheet has.");
        }

        IsSound = !ReportFaults(Row);
        for (var column = 0; column < values.Length; column++)
        {
            values[column] = CellText.Of(cells.GetValue(column));
        }

        return true;
    }

    public void Dispose()
    {
        cells.Dispose();
        faults.Dispose();
    }

    private bool ReportFaults(int lastRow)
    {
        var any = false;
        for (; faults.Row <= lastRow; faults.Next())
        {
            any = true;
            var cell = string.Create(
                CultureInfo.InvariantCulture,
                $"{Exchange.Headings.Letters(faults.Column)}{faults.Row}"
            );
            errors.Add(
                file,
                faults.Row,
                Exchange.Headings.Name(Headings, faults.Column),
                faults.Error,
                "a value",
                faults.Error is { } error
                    ? $"{error} found in {cell}: type the value, or empty the cell"
                    : $"a formula found in {cell}: paste its value"
            );
        }

        return any;
    }
}
