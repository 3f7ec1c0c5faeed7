using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>Reads the rows of one table from its sources into incoming rows, reporting every cell that is wrong.</summary>
internal sealed class RowIntake : ICellContext
{
    private readonly TableDefinition definition;
    private readonly ColumnDefinition[] columns;
    private readonly ImportDraft draft;
    private readonly InputErrors errors;
    private readonly IncomingRows incoming;
    private readonly List<(int Row, ColumnDefinition Column, string Code)> ownReferences = [];
    private readonly HashSet<int> broken = [];
    private readonly HashSet<int> unpriced = [];
    private readonly ColumnDefinition? currencyColumn;
    private RowReader reader = null!;
    private string file = "";
    private int[] placeOf = [];
    private (int Place, TextColumnBuilder Field)[] ownFields = [];

    public RowIntake(TableDefinition definition, ImportDraft draft, InputErrors errors)
    {
        this.definition = definition;
        columns = [.. definition.Columns];
        this.draft = draft;
        this.errors = errors;
        incoming = new IncomingRows(definition);
        currencyColumn = definition.CurrencyColumn;
    }

    public IncomingRows Incoming => incoming;

    /// <summary>References of rows to other rows of the same table, to be resolved when all rows are known.</summary>
    public IReadOnlyList<(int Row, ColumnDefinition Column, string Code)> OwnReferences =>
        ownReferences;

    /// <summary>Rows whose key was not understood; they take no part.</summary>
    public IReadOnlySet<int> Broken => broken;

    /// <summary>Rows whose currency or rate was not understood.</summary>
    public IReadOnlySet<int> Unpriced => unpriced;

    /// <summary>Reads a source to its end. False if it could not be read.</summary>
    public bool Read(
        RowReader from,
        string fileName,
        int source,
        Action<double> progress,
        CancellationToken ct
    )
    {
        reader = from;
        file = fileName;
        if (!MapHeader())
        {
            return false;
        }

        var rows = 0;
        while (reader.Read())
        {
            ReadRow(source);
            if ((++rows & 0xFFF) == 0)
            {
                ct.ThrowIfCancellationRequested();
                progress(reader.Fraction);
            }
        }

        return !reader.Failed;
    }

    private bool MapHeader()
    {
        var sound = true;
        placeOf = new int[definition.Columns.Count];
        placeOf.AsSpan().Fill(-1);
        List<(int, TextColumnBuilder)> own = [];
        for (var place = 0; place < reader.Header.Count; place++)
        {
            var heading = reader.Header[place];
            var column = definition.Columns.FirstOrDefault(known =>
                !known.IsComputed && known.Name.Equals(heading, StringComparison.OrdinalIgnoreCase)
            );
            if (column is not null)
            {
                placeOf[column.Index] = place;
            }
            else if (heading.StartsWith("x_", StringComparison.Ordinal))
            {
                own.Add((place, incoming.OwnField(heading)));
            }
            else
            {
                sound = false;
                ReportUnknown(heading);
            }
        }

        ownFields = [.. own];
        foreach (var column in definition.Columns)
        {
            if (column.IsRequired && placeOf[column.Index] < 0)
            {
                sound = false;
                errors.Add(
                    file,
                    1,
                    column.Name,
                    "",
                    $"a column {column.Name}",
                    $"the column {column.Name} is missing; {definition.Name} needs "
                        + string.Join(
                            ", ",
                            definition
                                .Columns.Where(known => known.IsRequired)
                                .Select(known => known.Name)
                        )
                );
            }
        }

        return sound;
    }

    private void ReportUnknown(string heading)
    {
        var names = definition
            .Columns.Where(column => !column.IsComputed)
            .Select(column => column.Name)
            .ToList();
        var nearest = NearestWord.Of(heading, names);
        errors.Add(
            file,
            1,
            heading,
            heading,
            nearest ?? "one of " + string.Join(", ", names),
            $"{definition.Name} has no column \"{InputErrors.Shorten(heading)}\"; "
                + (
                    nearest is null
                        ? $"known are {string.Join(", ", names)}."
                        : $"did you mean {nearest}?"
                )
                + " A column of your own begins with x_."
        );
    }

    private void ReadRow(int source)
    {
        var currency = RowCurrency();
        foreach (var column in columns)
        {
            var builder = incoming.Builders[column.Index];
            var place = placeOf[column.Index];
            if (place < 0 || reader[place].IsEmpty)
            {
                AddEmpty(column, builder, place);
            }
            else if (!TryAdd(column, builder, reader[place], currency))
            {
                builder.AddMissing();
                Refuse(
                    column,
                    reader[place],
                    CellParser.Expected(column, currency),
                    column.Kind == CellKind.Reference && !errors.IsFull
                        ? CellParser.Unknown(column, reader[place])
                        : null
                );
            }
        }

        foreach (var (place, field) in ownFields)
        {
            field.Add(reader[place].IsEmpty ? null : draft.Pool.Get(reader[place]));
        }

        incoming.AddSource(source, reader.Row);
    }

    private void AddEmpty(ColumnDefinition column, ColumnBuilder builder, int place)
    {
        if (column.Default is { } standard)
        {
            ((NumberColumnBuilder<int>)builder).Add(standard);
            return;
        }

        builder.AddMissing();
        if (column.IsRequired && place >= 0)
        {
            var expected = CellParser.Expected(column, draft.Currency);
            Refuse(column, "", expected, $"{column.Name} is empty, {expected} expected");
        }
    }

    private void Refuse(
        ColumnDefinition column,
        ReadOnlySpan<char> value,
        string expected,
        string? message
    )
    {
        draft.MarkUnclean(definition);
        if (column.IsKey)
        {
            broken.Add(incoming.Count);
        }

        if (column == currencyColumn || column == definition.Conversion?.Rate)
        {
            unpriced.Add(incoming.Count);
        }

        errors.Add(file, reader.Row, column.Name, value, expected, message);
    }

    private Currency RowCurrency()
    {
        var place = currencyColumn is null ? -1 : placeOf[currencyColumn.Index];
        return place >= 0 && Currency.TryParse(reader[place], out var currency)
            ? currency
            : draft.Currency;
    }

    private bool TryAdd(
        ColumnDefinition column,
        ColumnBuilder builder,
        ReadOnlySpan<char> text,
        Currency currency
    ) => CellReading.TryAdd(column, builder, text, currency, this);

    string ICellContext.Pooled(ReadOnlySpan<char> text) => draft.Pool.Get(text);

    bool ICellContext.TryReference(ColumnDefinition column, ReadOnlySpan<char> text, out int stored)
    {
        if (column.Targets is [var only] && only == definition.Name)
        {
            stored = Cell.NoInt;
            ownReferences.Add((incoming.Count, column, draft.Pool.Get(text)));
            return true;
        }

        if (!draft.TryResolve(column, text, out stored))
        {
            return false;
        }

        if (stored == Cell.NoInt)
        {
            // the table that may know the code could not be read: rules that follow the reference must not run
            draft.MarkUnclean(definition);
        }

        return true;
    }
}
