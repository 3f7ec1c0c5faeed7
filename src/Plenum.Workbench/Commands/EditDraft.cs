using System.Globalization;
using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Commands;

/// <summary>
/// A project's value while a command writes into it. Cells are given as text and read as in files; a cell that is not
/// understood ends the command. What holds for the project as a whole is checked when it is done.
/// </summary>
public sealed class EditDraft : ICellContext
{
    private readonly Dictionary<TableDefinition, TableEdit> edits = [];
    private readonly Dictionary<(TableDefinition Table, string Code), int> newCodes = [];
    private readonly IdBook ids;
    private DraftBreakdown? breakdown;

    internal EditDraft(Project before, IdBook ids)
    {
        Before = before;
        this.ids = ids;
        ProjectCurrency = before.Settings.Currency;
    }

    /// <summary>The value that the command was given.</summary>
    public Project Before { get; }

    /// <summary>The breakdown as it stands in this draft.</summary>
    public DraftBreakdown Breakdown => breakdown ??= new DraftBreakdown(this);

    /// <summary>Tables that were written, or read row by row, so far.</summary>
    internal IReadOnlyDictionary<TableDefinition, TableEdit> Edits => edits;

    internal Currency ProjectCurrency { get; }

    /// <summary>Finds the persons who wrote cells lately; set by the project.</summary>
    internal Func<
        ColumnDefinition,
        int,
        (string Person, DateTimeOffset At)?
    > LastWriter { get; init; } = (_, _) => null;

    /// <summary>The table as it stands in this draft, to be read or written row by row.</summary>
    public TableEdit this[TableDefinition table] =>
        edits.TryGetValue(table, out var edit)
            ? edit
            : edits[table] = new TableEdit(Before[table], ids.Next(table));

    /// <summary>The row is there.</summary>
    public bool Has(TableDefinition table, int id) =>
        edits.TryGetValue(table, out var edit) ? edit.Has(id) : Before[table].RowOf(id) >= 0;

    /// <summary>The id of the row that has a code, also of one that was added in this draft; 0 if there is none.</summary>
    public int IdOf(TableDefinition table, string code)
    {
        if (newCodes.TryGetValue((table, code), out var added) && Has(table, added))
        {
            return added;
        }

        return
            Before[table].RowOfCode(code) is var row and >= 0
            && Before[table].Ids[row] is var id
            && Has(table, id)
            && CodeOf(table, id) == code
            ? id
            : 0;
    }

    /// <summary>The code of a row of a table whose key is one code.</summary>
    public string CodeOf(TableDefinition table, int id)
    {
        if (edits.TryGetValue(table, out var edit) && edit.Has(id))
        {
            return edit.Text(table.Keys[0], id) ?? "";
        }

        var row = Before[table].RowOf(id);
        return row < 0 ? "a row that is gone" : Before[table].Codes[row] ?? "";
    }

    /// <summary>Adds a row.</summary>
    /// <returns>Its id.</returns>
    /// <exception cref="EditException">A cell is not understood.</exception>
    public int Add(
        TableDefinition table,
        params ReadOnlySpan<(ColumnDefinition Column, string? Text)> cells
    )
    {
        var id = this[table].Add();
        foreach (var column in table.Columns)
        {
            if (column.Default is { } standard)
            {
                this[table].Set(column, id, standard);
            }
        }

        foreach (var (column, text) in cells)
        {
            Set(column, id, text);
        }

        return id;
    }

    /// <summary>Writes a cell as it would stand in a file; empty or null takes it out.</summary>
    /// <exception cref="EditException">It is not understood, or the row is not there.</exception>
    public void Set(ColumnDefinition column, int id, string? text)
    {
        var table = column.Table;
        NeedRow(table, id);
        if (string.IsNullOrEmpty(text))
        {
            Empty(column, id);
            return;
        }

        if (text.Contains('\0', StringComparison.Ordinal))
        {
            // no file that is read may have one, so none may be written
            const string Whole = "text without the character of number 0";
            throw Wrong(column, id, text, Whole, $"{column.Name}: {Whole} expected");
        }

        var cell = column.NewBuilder();
        if (
            !CellReading.TryAdd(column, cell, text, CurrencyOf(table, id), this)
            || (column is { Kind: CellKind.Text, IsRequired: true } && text.AsSpan().IsWhiteSpace())
        )
        {
            var expected = CellReading.Expected(column, CurrencyOf(table, id));
            throw Wrong(
                column,
                id,
                text,
                expected,
                $"{column.Name}: \"{InputErrors.Shorten(text)}\" found, {expected} expected"
            );
        }

        this[table].Set(column, id, cell.Build(), 0);
        if (column.IsKey && table.Keys.Count == 1)
        {
            newCodes[(table, text)] = id;
        }
    }

    /// <summary>Writes a cell that the writer saw with a value; somebody else may have written it since.</summary>
    /// <exception cref="EditConflictException">It holds neither what was seen nor what is to be written.</exception>
    public void Set(ColumnDefinition column, int id, string? text, string? seen)
    {
        NeedRow(column.Table, id);
        var theirs = Text(column, id) ?? "";
        if (theirs != (seen ?? "") && theirs != (text ?? ""))
        {
            var writer = LastWriter(column, id);
            throw new EditConflictException([
                new EditConflict(
                    column.Table.Name,
                    id,
                    Key(column.Table, id),
                    column.Name,
                    theirs.Length == 0 ? null : theirs,
                    string.IsNullOrEmpty(text) ? null : text,
                    writer?.Person,
                    writer?.At
                ),
            ]);
        }

        Set(column, id, text);
    }

    /// <summary>Lets a cell refer to a row of the column's only, or first, target table.</summary>
    public void SetReference(ColumnDefinition column, int id, int targetId)
    {
        NeedRow(column.Table, id);
        this[column.Table].Set(column, id, column.EncodeReference(0, targetId));
    }

    /// <summary>The id that a cell refers to in the column's only, or first, target table; 0 if none.</summary>
    public int Reference(ColumnDefinition column, int id)
    {
        var stored = this[column.Table].Int(column, id);
        return Cell.IsGiven(stored) && column.DecodeReference(stored) is (0, var target)
            ? target
            : 0;
    }

    public void Remove(TableDefinition table, int id)
    {
        NeedRow(table, id);
        this[table].Remove(id);
    }

    /// <summary>The cell as a file has it, as it stands in this draft; null for nothing.</summary>
    public string? Text(ColumnDefinition column, int id)
    {
        var edit = this[column.Table];
        switch (column.Storage)
        {
            case ColumnStorage.Text:
                return edit.Text(column, id);
            case ColumnStorage.Long:
                var amount = edit.Long(column, id);
                return amount == Cell.WithdrawnLong ? "-"
                    : amount == Cell.NoLong ? null
                    : Number(
                        column.Kind == CellKind.Money
                            ? CurrencyOf(column.Table, id).ToMajorUnits(amount)
                            : Ratio.Normal(amount / 100m)
                    );
            case ColumnStorage.Decimal:
                var exact = edit.Decimal(column, id);
                return exact == Cell.WithdrawnDecimal ? "-"
                    : exact == Cell.NoDecimal ? null
                    : Number(exact);
        }

        var value = edit.Int(column, id);
        return value == Cell.WithdrawnInt ? "-"
            : value == Cell.NoInt ? null
            : column.Kind switch
            {
                CellKind.Word => column.Codec!.Format(value),
                CellKind.Date => DateOnly
                    .FromDayNumber(value)
                    .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                CellKind.Percent => Number(Ratio.Normal(value / 100m)),
                CellKind.Reference => column.DecodeReference(value) switch
                {
                    (< 0, var word) => column.Codec!.Format(word),
                    var (target, row) => CodeOf(ProjectLayout.Target(column, target), row),
                },
                _ => value.ToString(CultureInfo.InvariantCulture),
            };
    }

    /// <summary>The complaint about one cell.</summary>
    public EditException Wrong(
        ColumnDefinition column,
        int id,
        string? value,
        string expected,
        string message
    ) =>
        new([
            new EditFault(
                column.Table.Name,
                Key(column.Table, id),
                column.Name,
                value,
                expected,
                message
            ),
        ]);

    string ICellContext.Pooled(ReadOnlySpan<char> text) => text.ToString();

    bool ICellContext.TryReference(ColumnDefinition column, ReadOnlySpan<char> text, out int stored)
    {
        stored = Cell.NoInt;
        if (column.Codec is { } words && words.TryParse(text, out var word))
        {
            stored = ColumnDefinition.EncodeWord(word);
            return true;
        }

        for (var target = 0; target < column.Targets.Count; target++)
        {
            if (IdOf(ProjectLayout.Target(column, target), text.ToString()) is var id and > 0)
            {
                stored = column.EncodeReference(target, id);
                return true;
            }
        }

        return false;
    }

    /// <summary>The key of a row, in words.</summary>
    internal string Key(TableDefinition table, int id) =>
        Has(table, id)
            ? string.Join(
                ", ",
                table.Keys.Select(key => Text(key, id)).Where(part => !string.IsNullOrEmpty(part))
            )
            : "";

    private static string Number(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    private void Empty(ColumnDefinition column, int id)
    {
        if (column.IsRequired)
        {
            var expected = CellReading.Expected(column, ProjectCurrency);
            throw Wrong(column, id, null, expected, $"{column.Name} is empty, {expected} expected");
        }

        if (column.Default is { } standard)
        {
            this[column.Table].Set(column, id, standard);
        }
        else
        {
            this[column.Table].Clear(column, id);
        }
    }

    private void NeedRow(TableDefinition table, int id)
    {
        if (!Has(table, id))
        {
            throw new EditException(
                $"This row of {table.Name} is no longer there; somebody has removed it.",
                "a row that is there"
            );
        }
    }

    private Currency CurrencyOf(TableDefinition table, int id) =>
        table.CurrencyColumn is { } column
        && this[table].Int(column, id) is var number
        && Cell.IsGiven(number)
            ? Currency.FromNumber(number)
            : ProjectCurrency;
}
