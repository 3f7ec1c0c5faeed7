using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Exchange.Import;

/// <summary>The project while an import is being taken in: tables that are done, and those that could not be read.</summary>
internal sealed class ImportDraft
{
    private readonly Table[] tables;
    private readonly HashSet<TableDefinition> unclean = [];
    private readonly Dictionary<ColumnDefinition, Table[]> targets = [];

    public ImportDraft(Project before)
    {
        Before = before;
        tables = [.. before.Tables];
        Currency = before.Settings.Currency;
    }

    public Project Before { get; }

    public Currency Currency { get; set; }

    public TextPool Pool { get; } = new();

    public IReadOnlyList<Table> Tables => tables;

    public Table this[TableDefinition definition]
    {
        get => tables[ProjectLayout.IndexOf(definition)];
        set
        {
            tables[ProjectLayout.IndexOf(definition)] = value;
            targets.Clear();
        }
    }

    /// <summary>The table was read without a cell that was not understood.</summary>
    public bool IsClean(TableDefinition definition) => !unclean.Contains(definition);

    public void MarkUnclean(TableDefinition definition) => unclean.Add(definition);

    /// <summary>
    /// The stored number of a reference; false if the code is unknown. A code that a table which could not be read
    /// may have known is accepted as not given, to spare the person a complaint for every row that names it.
    /// </summary>
    public bool TryResolve(ColumnDefinition column, ReadOnlySpan<char> code, out int stored)
    {
        stored = Cell.NoInt;
        if (column.Codec is { } words && words.TryParse(code, out var word))
        {
            stored = ColumnDefinition.EncodeWord(word);
            return true;
        }

        var mayBeKnown = false;
        var tablesOf = TargetsOf(column);
        for (var target = 0; target < tablesOf.Length; target++)
        {
            var table = tablesOf[target];
            if (table.RowOfCode(code) is var row and >= 0)
            {
                stored = column.EncodeReference(target, table.Ids[row]);
                return true;
            }

            mayBeKnown |= !IsClean(table.Definition);
        }

        return mayBeKnown;
    }

    private Table[] TargetsOf(ColumnDefinition column)
    {
        if (!targets.TryGetValue(column, out var found))
        {
            found = new Table[column.Targets.Count];
            for (var target = 0; target < found.Length; target++)
            {
                found[target] = this[ProjectLayout.Target(column, target)];
            }

            targets.Add(column, found);
        }

        return found;
    }
}
