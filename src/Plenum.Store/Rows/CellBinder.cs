using System.Buffers.Text;
using System.Globalization;
using System.Text;
using Plenum.Core.Foundation.Tables;
using Plenum.Store.Sqlite;

namespace Plenum.Store.Rows;

/// <summary>Puts the cells of one column into the parameters of a statement, row by row.</summary>
internal abstract class CellBinder
{
    private static readonly byte[] WithdrawnMark = "-"u8.ToArray();

    /// <summary>Binds the row's cell; every parameter of the column is bound each time.</summary>
    public abstract void Bind(Statement statement, int row);

    /// <param name="stored">The column.</param>
    /// <param name="parameter">Number of its first parameter.</param>
    /// <param name="column">Its cells.</param>
    public static CellBinder Of(StoredColumn stored, int parameter, Column column) =>
        stored.Definition.Kind switch
        {
            CellKind.Text or CellKind.Code => new TextBinder(parameter, (TextColumn)column),
            CellKind.Money or CellKind.Hours => new LongBinder(
                parameter,
                (NumberColumn<long>)column
            ),
            CellKind.Decimal => new DecimalBinder(parameter, (NumberColumn<decimal>)column),
            CellKind.Date => new DateBinder(parameter, (NumberColumn<int>)column),
            CellKind.Word => new WordBinder(
                parameter,
                (NumberColumn<int>)column,
                stored.Definition.Codec!
            ),
            CellKind.Reference => new ReferenceBinder(
                parameter,
                (NumberColumn<int>)column,
                stored.Definition
            ),
            _ => new WholeBinder(parameter, (NumberColumn<int>)column),
        };

    private sealed class TextBinder(int parameter, TextColumn column) : CellBinder
    {
        public override void Bind(Statement statement, int row) =>
            statement.Bind(parameter, column.Values[row]);
    }

    private sealed class WholeBinder(int parameter, NumberColumn<int> column) : CellBinder
    {
        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            if (Cell.IsGiven(value))
            {
                statement.Bind(parameter, (long)value);
            }
            else
            {
                BindAbsent(statement, parameter, value == Cell.WithdrawnInt);
            }
        }
    }

    private sealed class LongBinder(int parameter, NumberColumn<long> column) : CellBinder
    {
        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            if (Cell.IsGiven(value))
            {
                statement.Bind(parameter, value);
            }
            else
            {
                BindAbsent(statement, parameter, value == Cell.WithdrawnLong);
            }
        }
    }

    private sealed class DecimalBinder(int parameter, NumberColumn<decimal> column) : CellBinder
    {
        private readonly byte[] text = new byte[64];

        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            if (Cell.IsGiven(value))
            {
                value.TryFormat(text, out var length, default, CultureInfo.InvariantCulture);
                statement.Bind(parameter, text.AsSpan(0, length));
            }
            else
            {
                BindAbsent(statement, parameter, value == Cell.WithdrawnDecimal);
            }
        }
    }

    private sealed class DateBinder(int parameter, NumberColumn<int> column) : CellBinder
    {
        private readonly byte[] text = new byte[10];

        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            if (Cell.IsGiven(value))
            {
                var (year, month, day) = DateOnly.FromDayNumber(value);
                Utf8Formatter.TryFormat(year, text, out _, new('D', 4));
                text[4] = (byte)'-';
                Utf8Formatter.TryFormat(month, text.AsSpan(5), out _, new('D', 2));
                text[7] = (byte)'-';
                Utf8Formatter.TryFormat(day, text.AsSpan(8), out _, new('D', 2));
                statement.Bind(parameter, text);
            }
            else
            {
                BindAbsent(statement, parameter, value == Cell.WithdrawnInt);
            }
        }
    }

    private sealed class WordBinder(int parameter, NumberColumn<int> column, Codec codec)
        : CellBinder
    {
        private readonly Dictionary<int, byte[]> words = [];

        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            if (!Cell.IsGiven(value))
            {
                BindAbsent(statement, parameter, value == Cell.WithdrawnInt);
                return;
            }

            if (!words.TryGetValue(value, out var word))
            {
                word = Encoding.UTF8.GetBytes(codec.Format(value));
                words.Add(value, word);
            }

            statement.Bind(parameter, word);
        }
    }

    private sealed class ReferenceBinder(
        int parameter,
        NumberColumn<int> column,
        ColumnDefinition definition
    ) : CellBinder
    {
        public override void Bind(Statement statement, int row)
        {
            var value = column.Values[row];
            var (filled, id) = Cell.IsGiven(value)
                ? definition.DecodeReference(value)
                : (Target: int.MinValue, Id: 0);
            for (var target = 0; target < definition.Targets.Count; target++)
            {
                if (target == filled)
                {
                    statement.Bind(parameter + target, (long)id);
                }
                else
                {
                    statement.BindNull(parameter + target);
                }
            }

            if (definition.Codec is { } words)
            {
                statement.Bind(
                    parameter + definition.Targets.Count,
                    filled == -1 ? words.Format(id) : null
                );
            }
        }
    }

    private static void BindAbsent(Statement statement, int parameter, bool withdrawn)
    {
        if (withdrawn)
        {
            statement.Bind(parameter, WithdrawnMark);
        }
        else
        {
            statement.BindNull(parameter);
        }
    }
}
