using System.Buffers;
using System.Globalization;
using System.Text;

namespace Plenum.Samples.Foundation;

/// <summary>
/// Writes one table as CSV: UTF-8 without byte-order mark, line feeds, commas, cells quoted after RFC 4180 only where
/// they must be. Rows stream through one buffer of fixed size. The file stands under a temporary name until
/// <see cref="Complete"/>.
/// </summary>
internal sealed class TableWriter : IDisposable
{
    private const int BufferSize = 1 << 16;

    /// <summary>Room that any figure or date fits in.</summary>
    private const int FigureSize = 32;

    private static readonly SearchValues<char> _quoted = SearchValues.Create(",\"\r\n");

    private readonly string _path;
    private readonly FileStream _file;
    private readonly byte[] _buffer = new byte[BufferSize];
    private readonly int _columns;
    private int _used;
    private int _cells;

    public TableWriter(string folder, string table, params ReadOnlySpan<string> columns)
    {
        _path = Path.Combine(folder, table + ".csv");
        _file = new FileStream(
            _path + ".part",
            FileMode.Create,
            FileAccess.Write,
            FileShare.None,
            1
        );
        _columns = columns.Length;
        foreach (var column in columns)
        {
            Text(column);
        }
        EndRow();
    }

    public TableWriter Text(string? value)
    {
        StartCell();
        if (string.IsNullOrEmpty(value))
        {
            return this;
        }
        if (value.AsSpan().ContainsAny(_quoted) || value[0] == ' ' || value[^1] == ' ')
        {
            Raw("\"");
            Raw(value.Replace("\"", "\"\"", StringComparison.Ordinal));
            Raw("\"");
        }
        else
        {
            Raw(value);
        }
        return this;
    }

    public TableWriter Empty()
    {
        StartCell();
        return this;
    }

    public TableWriter Whole(long value)
    {
        StartCell();
        AppendWhole(value);
        return this;
    }

    public TableWriter WholeOrEmpty(long? value) => value is { } given ? Whole(given) : Empty();

    /// <summary>A count of hundredths (minor units of the currency, hours, per cent), written with two decimals.</summary>
    public TableWriter Hundredths(long value)
    {
        StartCell();
        Room(FigureSize);
        if (value < 0)
        {
            _buffer[_used++] = (byte)'-';
            value = -value;
        }
        AppendWhole(value / 100);
        var rest = (int)(value % 100);
        _buffer[_used++] = (byte)'.';
        _buffer[_used++] = (byte)('0' + (rest / 10));
        _buffer[_used++] = (byte)('0' + (rest % 10));
        return this;
    }

    public TableWriter HundredthsOrEmpty(long? value) =>
        value is { } given ? Hundredths(given) : Empty();

    public TableWriter Date(DateOnly value)
    {
        StartCell();
        Room(FigureSize);
        value.TryFormat(
            _buffer.AsSpan(_used),
            out var written,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture
        );
        _used += written;
        return this;
    }

    public TableWriter DateOrEmpty(DateOnly? value) => value is { } given ? Date(given) : Empty();

    public void EndRow()
    {
        if (_cells != _columns)
        {
            throw new InvalidOperationException(
                $"{Path.GetFileName(_path)}: a row of {_cells} cells, {_columns} columns"
            );
        }
        Room(1);
        _buffer[_used++] = (byte)'\n';
        _cells = 0;
    }

    /// <summary>The file gets its own name; one that stood there is replaced.</summary>
    public void Complete()
    {
        Flush();
        _file.Dispose();
        File.Move(_path + ".part", _path, overwrite: true);
    }

    /// <summary>Without <see cref="Complete"/> before it, nothing is left of the table.</summary>
    public void Dispose()
    {
        _file.Dispose();
        File.Delete(_path + ".part");
    }

    private void StartCell()
    {
        if (_cells++ > 0)
        {
            Room(1);
            _buffer[_used++] = (byte)',';
        }
    }

    private void AppendWhole(long value)
    {
        Room(FigureSize);
        value.TryFormat(
            _buffer.AsSpan(_used),
            out var written,
            default,
            CultureInfo.InvariantCulture
        );
        _used += written;
    }

    private void Raw(ReadOnlySpan<char> text)
    {
        Room(Encoding.UTF8.GetMaxByteCount(text.Length));
        _used += Encoding.UTF8.GetBytes(text, _buffer.AsSpan(_used));
    }

    private void Room(int bytes)
    {
        if (_buffer.Length - _used < bytes)
        {
            Flush();
        }
    }

    private void Flush()
    {
        _file.Write(_buffer, 0, _used);
        _used = 0;
    }
}
