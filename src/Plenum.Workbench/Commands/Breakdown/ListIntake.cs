using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Lists;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Puts the rows of a list into a breakdown as a subtree, and complains of every row that does not fit.</summary>
internal sealed class ListIntake
{
    private readonly EditDraft draft;
    private readonly ReadList list;
    private readonly CodeCounter codes;
    private readonly List<EditFault> faults = [];
    private readonly int[] ids;
    private readonly int parentLevel;

    private ListIntake(EditDraft draft, ReadList list, int parent)
    {
        this.draft = draft;
        this.list = list;
        codes = new CodeCounter(draft);
        ids = new int[list.Rows.Count];
        parentLevel = parent == 0 ? 0 : draft.Breakdown.Level(parent);
    }

    /// <param name="draft">The project.</param>
    /// <param name="list">The list, without errors.</param>
    /// <param name="parent">Id of the element that the list goes below; 0 for an empty project.</param>
    /// <param name="after">Id of the sister that the first row comes after; 0 for the first place.</param>
    /// <returns>The id of each row.</returns>
    /// <exception cref="EditException">Some rows do not fit; all of them are told.</exception>
    public static IReadOnlyList<int> Put(EditDraft draft, ReadList list, int parent, int after)
    {
        if (parent != 0)
        {
            Elements.Need(draft, parent);
        }

        var intake = new ListIntake(draft, list, parent);
        if (parent == 0)
        {
            intake.CheckRoot();
        }
        else
        {
            intake.CheckSisters(parent);
        }

        intake.CheckCodes();
        intake.Throw();
        intake.Put(parent, after);
        intake.Throw();
        return intake.ids;
    }

    private void CheckRoot()
    {
        if (draft.Breakdown.Root != 0)
        {
            throw new EditException(
                $"{draft.Breakdown.Say(draft.Breakdown.Root)} is the root already; a list goes below an element.",
                "an element that the list goes below"
            );
        }

        foreach (var row in list.Rows.Where(row => row.Parent < 0).Skip(1))
        {
            Fault(
                row,
                ElementTable.Name,
                row.Name,
                "one row on the first level",
                $"\"{InputErrors.Shorten(row.Name)}\" stands on the first level too, but a project has one root: indent what is part of \"{InputErrors.Shorten(list.Rows[0].Name)}\""
            );
        }
    }

    private void CheckSisters(int parent)
    {
        var names = draft
            .Breakdown.Children(parent)
            .Select(id => draft.Text(ElementTable.Name, id)!)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var row in list.Rows.Where(row => row.Parent < 0 && names.Contains(row.Name)))
        {
            Fault(
                row,
                ElementTable.Name,
                row.Name,
                "a name that no sister has",
                $"{draft.Breakdown.Say(parent)} has a part \"{InputErrors.Shorten(row.Name)}\" already: name what makes them different"
            );
        }
    }

    private void CheckCodes()
    {
        foreach (var row in list.Rows)
        {
            if (
                row.Code is { } code
                && draft.IdOf(ElementTable.Definition, code) is var id and not 0
            )
            {
                Fault(
                    row,
                    ElementTable.Code,
                    code,
                    "a code that is free",
                    $"the project has {draft.Breakdown.Say(id)} already: give this row another code, or none"
                );
            }
        }
    }

    private void Put(int parent, int after)
    {
        var place =
            parent == 0 || after == 0
                ? 0
                : Elements.IndexOf(draft.Breakdown.Children(parent), after) + 1;
        for (var at = 0; at < list.Rows.Count; at++)
        {
            var row = list.Rows[at];
            var above = row.Parent < 0 ? parent : ids[row.Parent];
            ids[at] =
                above == 0
                    ? draft.Breakdown.AddRoot(row.Code ?? RootCode(), row.Name)
                    : draft.Breakdown.Add(
                        above,
                        row.Parent < 0 ? place++ : int.MaxValue,
                        row.Name,
                        row.Code ?? codes.Next(above, parentLevel + row.Level - 1)
                    );
            Fill(row, ids[at]);
        }
    }

    private void Fill(ListRow row, int id)
    {
        for (var cell = 0; cell < row.Cells.Count; cell++)
        {
            if (row.Cells[cell] is not { } text)
            {
                continue;
            }

            try
            {
                draft.Set(list.Columns[cell], id, text);
            }
            catch (EditException wrong)
            {
                faults.AddRange(wrong.Faults.Select(fault => Placed(row, fault)));
            }
        }
    }

    private string RootCode() => draft.Before.Settings.Code is { Length: > 0 } code ? code : "1";

    private static string Line(ListRow row) =>
        string.Create(CultureInfo.InvariantCulture, $"line {row.Line}");

    private static EditFault Placed(ListRow row, EditFault fault) =>
        fault with
        {
            Table = "list",
            Row = Line(row),
            Line = row.Line,
            Message = $"{Line(row)}: {fault.Message}",
        };

    private void Fault(
        ListRow row,
        ColumnDefinition column,
        string? value,
        string expected,
        string message
    ) =>
        faults.Add(
            Placed(
                row,
                new EditFault(
                    "",
                    null,
                    column.Name,
                    value is null ? null : InputErrors.Shorten(value),
                    expected,
                    message
                )
            )
        );

    private void Throw()
    {
        if (faults.Count > 0)
        {
            throw new EditException(faults);
        }
    }
}
