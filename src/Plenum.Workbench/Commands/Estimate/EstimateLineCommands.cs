using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Estimate;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Commands.Parts;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Commands.Estimate;

/// <summary>
/// Writes a block of estimate cells, such as rows from a spreadsheet. Rows beyond the lines that are named become new
/// lines of the package: of the cost element that they name, else labour, with the next free number.
/// </summary>
/// <param name="Package">Id of the package that further rows go to.</param>
/// <param name="Lines">Ids of the lines that the first rows go to, in order; 0 for a package's line that is not there yet.</param>
/// <param name="FirstColumn">Number of the first column among <see cref="EstimateLine.Columns"/>.</param>
/// <param name="Rows">Cells as they would stand in a file, row by row.</param>
public sealed record WriteEstimateCommand(
    int Package,
    IReadOnlyList<int> Lines,
    int FirstColumn,
    IReadOnlyList<IReadOnlyList<string>> Rows
) : EditCommand
{
    public override string Tell(Project before) =>
        Rows is [[var only]]
            ? $"{NameOf(FirstColumn)} of an estimate line of {Elements.Say(before, Package)}: {Commands.Cells.Short(only)}"
            : $"write {Rows.Count} estimate {(Rows.Count == 1 ? "line" : "lines")} of {Elements.Say(before, Package)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Package);
        NeedPackage(draft);
        _ = NameOf(FirstColumn);
        List<EditFault> faults = [];
        for (var row = 0; row < Rows.Count; row++)
        {
            try
            {
                Write(draft, row);
            }
            catch (EditException wrong)
            {
                faults.AddRange(
                    wrong.Faults.Select(fault =>
                        Rows.Count == 1
                            ? fault
                            : fault with
                            {
                                Message = $"row {row + 1}: {fault.Message}",
                            }
                    )
                );
            }
        }

        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }
    }

    private void Write(EditDraft draft, int row)
    {
        var cells = Rows[row];
        if (FirstColumn + cells.Count > EstimateLine.Columns.Count)
        {
            throw new EditException(
                $"{cells.Count} cells from {NameOf(FirstColumn)} on found, at most {EstimateLine.Columns.Count - FirstColumn} expected",
                $"at most {EstimateLine.Columns.Count - FirstColumn} cells"
            );
        }

        var isNew =
            row >= Lines.Count
            || Lines[row] == 0
            || !draft.Has(EstimateTable.Definition, Lines[row]);
        var id = isNew ? NewLine(draft, cells) : Lines[row];

        // the currency decides how amounts are read, so that it is written first
        foreach (
            var at in Enumerable
                .Range(0, cells.Count)
                .OrderByDescending(at => Column(at) == EstimateTable.Currency)
        )
        {
            // a new line has a cost element and a number already
            if (!isNew || cells[at].Trim().Length > 0)
            {
                draft.Set(Column(at), id, cells[at].Trim());
            }
        }

        ColumnDefinition Column(int at) => EstimateLine.Columns[FirstColumn + at];
    }

    private int NewLine(EditDraft draft, IReadOnlyList<string> cells)
    {
        var id = draft.Add(EstimateTable.Definition);
        draft.SetReference(EstimateTable.Package, id, Package);
        draft.Set(
            EstimateTable.CostElement,
            id,
            Given(cells, EstimateTable.CostElement) ?? "labour"
        );
        if (Given(cells, EstimateTable.Line) is null)
        {
            draft.Set(EstimateTable.Line, id, NextLine(draft, id));
        }

        return id;
    }

    private string? Given(IReadOnlyList<string> cells, ColumnDefinition column)
    {
        var at = EstimateLine.Columns.ToList().IndexOf(column) - FirstColumn;
        return at >= 0 && at < cells.Count && cells[at].Trim() is { Length: > 0 } text
            ? text
            : null;
    }

    private string NextLine(EditDraft draft, int self)
    {
        var table = draft[EstimateTable.Definition];
        var greatest = 0;
        foreach (var id in DraftRows.Of(draft, EstimateTable.Definition))
        {
            if (
                id != self
                && draft.Reference(EstimateTable.Package, id) == Package
                && int.TryParse(
                    table.Text(EstimateTable.Line, id),
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var number
                )
            )
            {
                greatest = Math.Max(greatest, number);
            }
        }

        return (greatest + 1).ToString(CultureInfo.InvariantCulture);
    }

    private void NeedPackage(EditDraft draft)
    {
        var kind = draft.Text(ElementTable.Kind, Package);
        if (draft.Breakdown.Children(Package).Count > 0 || kind is "branch" or "project")
        {
            throw new EditException(
                $"{draft.Breakdown.Say(Package)} is no package; estimate lines stand on packages.",
                "a package"
            );
        }
    }

    private static string NameOf(int column) =>
        column >= 0 && column < EstimateLine.Columns.Count
            ? EstimateLine.Columns[column].Name
            : throw new EditException(
                $"An estimate line has no column {column}; it has {EstimateLine.Columns.Count}.",
                $"0 to {EstimateLine.Columns.Count - 1}"
            );
}

/// <summary>Takes estimate lines out.</summary>
public sealed record RemoveEstimateLinesCommand(IReadOnlyList<int> Ids) : EditCommand
{
    public override string Tell(Project before) =>
        Ids.Count == 1
            ? $"take the estimate line {Commands.Cells.KeyOf(before, EstimateTable.Definition, Ids[0])} out"
            : $"take {Ids.Count} estimate lines out";

    protected internal override void Apply(EditDraft draft)
    {
        foreach (var id in Ids)
        {
            draft.Remove(EstimateTable.Definition, id);
        }
    }
}
