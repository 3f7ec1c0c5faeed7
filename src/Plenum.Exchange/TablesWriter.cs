using System.Buffers;
using System.Globalization;
using System.Text;

namespace Plenum.Exchange;

/// <summary>
/// Writes several tables one after another: start a table, give every row its cells from left to right, end the row; at
/// last finish. Nothing is seen under its real name before <see cref="Finish"/>; without it, disposing removes what was
/// written. What is written reads back as the same text cells, with these bounds: a row without any value is skipped by
/// readers; zero characters and lone halves of surrogate pairs, which UTF-8 text cannot carry, become U+FFFD; a record
/// longer than 1 000 000 characters is written but refused by the reader. Calls out of order throw
/// <see cref="InvalidOperationException"/>.
/// </summary>
public abstract class TablesWriter : IDisposable
{
    private static readonly SearchValues<char> NotInNames = SearchValues.Create("/\\:*?\"<>|");

    private readonly HashSet<string> tables = new(StringComparer.OrdinalIgnoreCase);
    private int columns = -1;
    private int cells;
    private bool finished;

    private protected TablesWriter() { }

    /// <summary>The name of the table being written.</summary>
    private protected string Table { get; private set; } = string.Empty;

    /// <summary>
    /// Begins a table with its header. The name must be right for a file and must not have been used in this export.
    /// </summary>
    public void StartTable(string table, IReadOnlyList<string> columns)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(table);
        ArgumentOutOfRangeException.ThrowIfZero(columns.Count, nameof(columns));
        if (table.AsSpan().ContainsAny(NotInNames) || table.StartsWith('.'))
        {
            throw new ArgumentException(
                $"\"{table}\" cannot be the name of a file.",
                nameof(table)
            );
        }

        ThrowInsideRow();
        if (!tables.Add(table))
        {
            throw new InvalidOperationException($"The table {table} has been written already.");
        }

        Table = table;
        this.columns = columns.Count;
        Begin(table, columns);
    }

    /// <summary>A cell of text; no text is no value.</summary>
    public void Text(ReadOnlySpan<char> value)
    {
        Count();
        if (value.Contains('\0') || value.ContainsAnyInRange('\uD800', '\uDFFF'))
        {
            Put(Carried(value));
        }
        else
        {
            Put(value);
        }
    }

    /// <summary>A cell with a number, exact, without zeros at the end: 1.50 is written 1.5.</summary>
    public void Number(decimal value)
    {
        Span<char> digits = stackalloc char[32];
        value.TryFormat(digits, out var length, provider: CultureInfo.InvariantCulture);
        ReadOnlySpan<char> plain = digits[..length];
        if (plain.Contains('.'))
        {
            plain = plain.TrimEnd('0').TrimEnd('.');
        }

        Count();
        PutNumber(value, plain is "-0" ? "0" : plain);
    }

    /// <summary>A cell with a day, such as 2026-03-31.</summary>
    public void Date(DateOnly value)
    {
        Count();
        PutDate(value);
    }

    /// <summary>A cell without a value.</summary>
    public void Empty()
    {
        Count();
        Put([]);
    }

    /// <summary>Ends the row, which must have as many cells as the table has columns.</summary>
    public void EndRow()
    {
        if (cells != columns)
        {
            throw new InvalidOperationException(
                $"A row of {Table} has {columns} cells, not {Math.Max(0, cells)}."
            );
        }

        End();
        cells = 0;
    }

    /// <summary>
    /// Writes out what is left and gives everything its real name, in place of what had that name before. Everything is
    /// on disk after this and not earlier.
    /// </summary>
    public void Finish()
    {
        ThrowInsideRow();
        Complete();
        finished = true;
    }

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    private protected abstract void Begin(string table, IReadOnlyList<string> columns);

    private protected abstract void Put(ReadOnlySpan<char> value);

    private protected abstract void PutNumber(decimal value, ReadOnlySpan<char> plain);

    private protected abstract void PutDate(DateOnly value);

    private protected abstract void End();

    private protected abstract void Complete();

    protected abstract void Dispose(bool disposing);

    /// <summary>The text without what UTF-8 text cannot carry.</summary>
    private static string Carried(ReadOnlySpan<char> value)
    {
        var carried = new StringBuilder(value.Length);
        foreach (var rune in value.EnumerateRunes())
        {
            carried.Append(rune.Value == 0 ? Rune.ReplacementChar.ToString() : rune.ToString());
        }

        return carried.ToString();
    }

    private void Count()
    {
        if (finished || cells >= columns)
        {
            throw new InvalidOperationException(
                columns < 0
                    ? "No table has been started."
                    : $"A row of {Table} has {columns} cells, no more, and none after the end."
            );
        }

        cells++;
    }

    private void ThrowInsideRow()
    {
        if (finished || cells > 0)
        {
            throw new InvalidOperationException(
                finished ? "The export is finished." : $"A row of {Table} has not been ended."
            );
        }
    }
}
