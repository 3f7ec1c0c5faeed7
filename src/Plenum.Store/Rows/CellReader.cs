using System.Buffers.Text;
using System.Globalization;
using System.Text;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;
using SQLitePCL;

namespace Plenum.Store.Rows;

/// <summary>Fills one column from the rows of a query. A cell that cannot be understood makes the file damaged.</summary>
internal abstract class CellReader
{
    private CellReader(StoredColumn stored, int index)
    {
        Stored = stored;
        Index = index;
    }

    protected StoredColumn Stored { get; }

    /// <summary>Number of the column's first part in the query.</summary>
    protected int Index { get; }

    public abstract void Read(Statement statement, int row);

    public abstract void Grow(int rows);

    /// <summary>The column of the first so many rows.</summary>
    public abstract Column Build(int rows);

    public static CellReader Of(StoredColumn stored, int index) =>
        stored.Definition.Kind switch
        {
            CellKind.Text or CellKind.Code => new TextReader(stored, index),
            CellKind.Money or CellKind.Hours => new LongReader(stored, index),
            CellKind.Decimal => new DecimalReader(stored, index),
            CellKind.Date => new DateReader(stored, index),
            CellKind.Word => new WordReader(stored, index),
            CellKind.Reference => new ReferenceReader(stored, index),
            _ => new WholeReader(stored, index),
        };

    protected StoreException Unreadable(Statement statement, int part = 0) =>
        TableReader.Damaged(
            statement,
            Stored.Definition.Table,
            Stored.Parts[part].Name,
            Index + part
        );

    private bool IsWithdrawn(Statement statement) =>
        Stored.Definition.IsWithdrawable
        && statement.Type(Index) == raw.SQLITE_TEXT
        && statement.Utf8(Index).SequenceEqual("-"u8);

    private abstract class NumberReader<T>(StoredColumn stored, int index)
        : CellReader(stored, index)
        where T : unmanaged, System.Numerics.INumber<T>
    {
        private T[] values = [];

        protected void Set(int row, T value) => values[row] = value;

        public override void Grow(int rows) => Array.Resize(ref values, rows);

        public override Column Build(int rows)
        {
            Array.Resize(ref values, rows);
            return new NumberColumn<T>(values);
        }
    }

    private sealed class TextReader(StoredColumn stored, int index) : CellReader(stored, index)
    {
        private readonly TextPool pool = new();
        private string?[] values = [];

        public override void Read(Statement statement, int row)
        {
            var text = statement.Utf8(Index);
            values[row] =
                !text.IsEmpty ? pool.Of(text)
                : statement.IsNull(Index) ? null
                : "";
        }

        public override void Grow(int rows) => Array.Resize(ref values, rows);

        public override Column Build(int rows)
        {
            Array.Resize(ref values, rows);
            return new TextColumn(values);
        }
    }

    private sealed class WholeReader(StoredColumn stored, int index)
        : NumberReader<int>(stored, index)
    {
        public override void Read(Statement statement, int row)
        {
            var value = statement.Long(Index);
            var type =
                value == 0 || Stored.Definition.IsWithdrawable
                    ? statement.Type(Index)
                    : raw.SQLITE_INTEGER;
            Set(
                row,
                type == raw.SQLITE_NULL ? Cell.NoInt
                    : type == raw.SQLITE_INTEGER && value is > Cell.WithdrawnInt and <= int.MaxValue
                        ? (int)value
                    : IsWithdrawn(statement) ? Cell.WithdrawnInt
                    : throw Unreadable(statement)
            );
        }
    }

    private sealed class LongReader(StoredColumn stored, int index)
        : NumberReader<long>(stored, index)
    {
        public override void Read(Statement statement, int row)
        {
            var value = statement.Long(Index);
            var type =
                value == 0 || Stored.Definition.IsWithdrawable
                    ? statement.Type(Index)
                    : raw.SQLITE_INTEGER;
            Set(
                row,
                type == raw.SQLITE_NULL ? Cell.NoLong
                    : type == raw.SQLITE_INTEGER && value > Cell.WithdrawnLong ? value
                    : IsWithdrawn(statement) ? Cell.WithdrawnLong
                    : throw Unreadable(statement)
            );
        }
    }

    private sealed class DecimalReader(StoredColumn stored, int index)
        : NumberReader<decimal>(stored, index)
    {
        private const NumberStyles Exact =
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;

        public override void Read(Statement statement, int row)
        {
            if (statement.IsNull(Index))
            {
                Set(row, Cell.NoDecimal);
            }
            else if (
                decimal.TryParse(
                    statement.Utf8(Index),
                    Exact,
                    CultureInfo.InvariantCulture,
                    out var value
                ) && Cell.IsGiven(value)
            )
            {
                Set(row, value);
            }
            else
            {
                Set(
                    row,
                    IsWithdrawn(statement) ? Cell.WithdrawnDecimal : throw Unreadable(statement)
                );
            }
        }
    }

    private sealed class DateReader(StoredColumn stored, int index)
        : NumberReader<int>(stored, index)
    {
        public override void Read(Statement statement, int row)
        {
            var text = statement.Utf8(Index);
            if (TryParse(text, out var day))
            {
                Set(row, day);
            }
            else if (statement.IsNull(Index))
            {
                Set(row, Cell.NoInt);
            }
            else
            {
                Set(row, IsWithdrawn(statement) ? Cell.WithdrawnInt : throw Unreadable(statement));
            }
        }

        private static bool TryParse(ReadOnlySpan<byte> text, out int day)
        {
            day = 0;
            if (
                text.Length != 10
                || text[4] != '-'
                || text[7] != '-'
                || !Utf8Parser.TryParse(text[..4], out uint year, out var used)
                || used != 4
                || !Utf8Parser.TryParse(text[5..7], out uint month, out used)
                || used != 2
                || !Utf8Parser.TryParse(text[8..], out uint date, out used)
                || used != 2
                || year == 0
                || month is 0 or > 12
                || date == 0
                || date > DateTime.DaysInMonth((int)year, (int)month)
            )
            {
                return false;
            }

            day = new DateOnly((int)year, (int)month, (int)date).DayNumber;
            return true;
        }
    }

    private sealed class WordReader(StoredColumn stored, int index)
        : NumberReader<int>(stored, index)
    {
        private readonly List<(byte[] Word, int Value)> words = [];

        public override void Read(Statement statement, int row)
        {
            var text = statement.Utf8(Index);
            foreach (var (word, value) in words)
            {
                if (text.SequenceEqual(word))
                {
                    Set(row, value);
                    return;
                }
            }

            if (statement.IsNull(Index))
            {
                Set(row, Cell.NoInt);
            }
            else if (
                Stored.Definition.Codec!.TryParse(Encoding.UTF8.GetString(text), out var parsed)
            )
            {
                words.Add((text.ToArray(), parsed));
                Set(row, parsed);
            }
            else
            {
                Set(row, IsWithdrawn(statement) ? Cell.WithdrawnInt : throw Unreadable(statement));
            }
        }
    }

    private sealed class ReferenceReader(StoredColumn stored, int index)
        : NumberReader<int>(stored, index)
    {
        private readonly int targets = stored.Definition.Targets.Count;

        public override void Read(Statement statement, int row)
        {
            var found = Cell.NoInt;
            for (var target = 0; target < targets; target++)
            {
                var id = statement.Long(Index + target);
                if (id == 0 && statement.IsNull(Index + target))
                {
                    continue;
                }

                if (found != Cell.NoInt || id <= 0 || id > int.MaxValue / targets)
                {
                    throw Unreadable(statement, target);
                }

                found = Stored.Definition.EncodeReference(target, (int)id);
            }

            if (
                Stored.Definition.Codec is { } words
                && statement.String(Index + targets) is { } word
            )
            {
                found =
                    found == Cell.NoInt && words.TryParse(word, out var value)
                        ? ColumnDefinition.EncodeWord(value)
                        : throw Unreadable(statement, targets);
            }

            Set(row, found);
        }
    }
}
