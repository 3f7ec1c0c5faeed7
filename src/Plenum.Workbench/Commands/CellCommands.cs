using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>A cell and what is to stand in it.</summary>
/// <param name="Table">Name of the table.</param>
/// <param name="Id">The row.</param>
/// <param name="Column">Name of the column.</param>
/// <param name="Text">As it would stand in a file; null or empty for nothing.</param>
/// <param name="Seen">What the writer saw there before; null or empty for nothing.</param>
public sealed record CellText(string Table, int Id, string Column, string? Text, string? Seen)
{
    internal ColumnDefinition Definition => Cells.ColumnOf(Table, Column);
}

/// <summary>Writes one cell; somebody else may have written it since it was seen.</summary>
public sealed record SetCellCommand(CellText Cell) : EditCommand
{
    public override string Tell(Project before) => Cells.Tell(before, Cell);

    protected internal override void Apply(EditDraft draft) =>
        draft.Set(Cell.Definition, Cell.Id, Cell.Text, Cell.Seen);
}

/// <summary>Writes several cells: all or none.</summary>
/// <param name="Words">What is done, in words.</param>
/// <param name="Texts">The cells.</param>
public sealed record SetCellsCommand(string Words, IReadOnlyList<CellText> Texts) : EditCommand
{
    public override string Tell(Project before) => Words;

    protected internal override void Apply(EditDraft draft)
    {
        List<EditConflict> conflicts = [];
        List<EditFault> faults = [];
        foreach (var cell in Texts)
        {
            try
            {
                draft.Set(cell.Definition, cell.Id, cell.Text, cell.Seen);
            }
            catch (EditConflictException both)
            {
                conflicts.AddRange(both.Conflicts);
            }
            catch (EditException wrong)
            {
                faults.AddRange(wrong.Faults);
            }
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }

        if (conflicts.Count > 0)
        {
            throw new EditConflictException(conflicts);
        }
    }
}

/// <summary>Adds a row to a table.</summary>
/// <param name="Table">Name of the table.</param>
/// <param name="Texts">Its cells by the names of their columns, as they would stand in a file.</param>
public sealed record AddRowCommand(string Table, IReadOnlyList<KeyValuePair<string, string?>> Texts)
    : EditCommand
{
    public override string Tell(Project before)
    {
        var table = Cells.TableOf(Table);
        var keys = Texts.Where(text => Cells.ColumnOf(Table, text.Key).IsKey);
        return $"add {string.Join(", ", keys.Select(key => key.Value))} to {table.Name}";
    }

    protected internal override void Apply(EditDraft draft)
    {
        var id = draft.Add(Cells.TableOf(Table));
        foreach (var (column, text) in Texts)
        {
            draft.Set(Cells.ColumnOf(Table, column), id, text);
        }
    }
}

/// <summary>Takes a row out of a table; nothing may refer to it.</summary>
public sealed record RemoveRowCommand(string Table, int Id) : EditCommand
{
    public override string Tell(Project before) =>
        $"take {Cells.KeyOf(before, Cells.TableOf(Table), Id)} out of {Table}";

    protected internal override void Apply(EditDraft draft) =>
        draft.Remove(Cells.TableOf(Table), Id);
}

/// <summary>Finds tables and columns by name, and says cells in words.</summary>
internal static class Cells
{
    private const int LongestShown = 60;

    public static TableDefinition TableOf(string name) =>
        ProjectLayout.Find(name)
        ?? throw NotFound(
            $"There is no table {InputErrors.Shorten(name)}",
            name,
            ProjectLayout.Tables.Select(table => table.Name)
        );

    public static ColumnDefinition ColumnOf(string table, string column) =>
        TableOf(table).Columns.FirstOrDefault(known => known.Name == column && !known.IsComputed)
        ?? throw NotFound(
            $"{table} has no column {InputErrors.Shorten(column)}",
            column,
            TableOf(table).Columns.Where(known => !known.IsComputed).Select(known => known.Name)
        );

    private static EditException NotFound(string message, string word, IEnumerable<string> known)
    {
        var nearest = NearestWord.Of(word, known);
        return new EditException(
            message + (nearest is null ? "." : $"; did you mean {nearest}?"),
            nearest ?? "one of " + string.Join(", ", known)
        );
    }

    /// <summary>Such as "name of 03.4: RO train D".</summary>
    public static string Tell(Project before, CellText cell)
    {
        var column = cell.Definition;
        var row = KeyOf(before, column.Table, cell.Id);
        return string.IsNullOrEmpty(cell.Text)
            ? $"empty {column.Name} of {row}"
            : $"{column.Name} of {row}: {Short(cell.Text)}";
    }

    public static string KeyOf(Project project, TableDefinition definition, int id)
    {
        var table = project[definition];
        var row = table.RowOf(id);
        var text = new ProjectText(project);
        return row < 0
            ? "a new row"
            : string.Join(
                ", ",
                definition
                    .Keys.Select(key => text.Of(table, row, key))
                    .Where(part => part is not null)
            );
    }

    public static string Short(string text)
    {
        var line = text.ReplaceLineEndings(" ");
        return line.Length <= LongestShown ? line : line[..LongestShown] + "…";
    }
}
