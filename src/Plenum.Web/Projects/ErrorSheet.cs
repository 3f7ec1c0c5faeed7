using System.Buffers;
using System.Globalization;
using System.Text;
using Plenum.Core.Foundation;

namespace Plenum.Web.Projects;

/// <summary>Errors of an import as a CSV file for a spreadsheet.</summary>
public static class ErrorSheet
{
    private const string Formula = "=+-@\t\r";

    private static readonly SearchValues<char> Special = SearchValues.Create(",\"\r\n;\t");

    /// <summary>
    /// UTF-8 with a byte-order mark, so that a spreadsheet program reads it as such. A cell that such a program would
    /// take for a formula begins with an apostrophe: the cells are of any file that was brought.
    /// </summary>
    public static byte[] Of(IEnumerable<InputError> errors)
    {
        var text = new StringBuilder("file,row,column,value,expected,message\r\n");
        foreach (var error in errors)
        {
            text.AppendJoin(
                    ',',
                    Cell(error.File),
                    error.Row?.ToString(CultureInfo.InvariantCulture),
                    Cell(error.Column),
                    Cell(error.Value),
                    Cell(error.Expected),
                    Cell(error.Message)
                )
                .Append("\r\n");
        }

        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    private static string Cell(string? value)
    {
        if (value is null or "")
        {
            return "";
        }

        var plain = Formula.Contains(value[0]) && !IsNumber(value) ? "'" + value : value;
        return plain.AsSpan().IndexOfAny(Special) < 0
            ? plain
            : $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    private static bool IsNumber(string value) =>
        decimal.TryParse(
            value,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out _
        );
}
