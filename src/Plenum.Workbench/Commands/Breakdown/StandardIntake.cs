using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Puts a standard breakdown into a project.</summary>
internal sealed class StandardIntake
{
    // written by the breakdown itself, or only after their tables
    private static readonly ColumnDefinition[] Placed =
    [
        ElementTable.Code,
        ElementTable.Parent,
        ElementTable.Order,
        ElementTable.Name,
    ];

    private readonly EditDraft draft;
    private readonly int under;
    private readonly StandardContent standard;
    private readonly StandardTable elements;
    private readonly StandardChoice choice;
    private readonly CodeCounter codes;
    private readonly List<EditFault> faults = [];

    // by code in the standard
    private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> levels = new(StringComparer.Ordinal);

    private StandardIntake(
        EditDraft draft,
        int under,
        StandardContent standard,
        IReadOnlyList<LeaveOut> leave
    )
    {
        this.draft = draft;
        this.under = under;
        this.standard = standard;
        elements = standard.Table(ElementTable.Definition);
        choice = new StandardChoice(elements, leave, faults, standard.Name);
        codes = new CodeCounter(draft);
    }

    /// <exception cref="EditException">Something does not fit; all of it is told.</exception>
    public static void Put(
        EditDraft draft,
        int under,
        StandardContent standard,
        IReadOnlyList<LeaveOut> leave
    )
    {
        var intake = new StandardIntake(draft, under, standard, leave);
        intake.Check();
        intake.Throw();
        intake.AddSettings();
        intake.AddTypes();
        intake.AddElements();
        intake.AddRows();
        intake.NoteLeftOut();
        intake.Throw();
    }

    private void Check()
    {
        if (elements.Count < 2)
        {
            throw new EditException(
                $"{standard.Name} has no parts.",
                "a standard breakdown with parts"
            );
        }

        if (under == 0)
        {
            if (draft.Breakdown.Root != 0)
            {
                throw new EditException(
                    $"{draft.Breakdown.Say(draft.Breakdown.Root)} is the root already; name the element that is to be filled.",
                    "an element of the project"
                );
            }

            return;
        }

        Elements.Need(draft, under);
        CheckSplit();
        var names = draft
            .Breakdown.Children(under)
            .Select(id => draft.Text(ElementTable.Name, id)!)
            .ToHashSet(StringComparer.Ordinal);
        for (var row = 1; row < elements.Count; row++)
        {
            var name = elements.Cell(row, ElementTable.Name)!;
            if (choice.IsTop(row) && !choice.IsLeftOut(row) && names.Contains(name))
            {
                Fault(
                    row,
                    ElementTable.Name,
                    name,
                    "a name that no sister has",
                    $"{draft.Breakdown.Say(under)} has a part \"{name}\" already: leave {elements.Cell(row, ElementTable.Code)} out with a reason, or name yours differently"
                );
            }
        }
    }

    /// <summary>One logic for each split: parts of another logic do not go beside those that are there.</summary>
    private void CheckSplit()
    {
        var own = draft.Text(ElementTable.Split, under);
        var theirs = elements.Cell(0, ElementTable.Split);
        if (
            own is not null
            && theirs is not null
            && own != theirs
            && draft.Breakdown.Children(under).Count > 0
        )
        {
            Fault(
                0,
                ElementTable.Split,
                theirs,
                own,
                $"{draft.Breakdown.Say(under)} is split by {own} and {standard.Name} by {theirs}: fill an element of its own with it"
            );
        }
    }

    private void AddSettings()
    {
        var settings = standard.Table(ProjectTable.Definition);
        for (var row = 0; row < settings.Count; row++)
        {
            var key = settings.Cell(row, ProjectTable.Key)!;
            if (
                under == 0
                && key is not ("code" or "name")
                && draft.IdOf(ProjectTable.Definition, key) == 0
            )
            {
                draft.Add(
                    ProjectTable.Definition,
                    (ProjectTable.Key, key),
                    (ProjectTable.Value, settings.Cell(row, ProjectTable.Value))
                );
            }
        }
    }

    /// <summary>Part types that the project does not have, with their work sets.</summary>
    private void AddTypes()
    {
        HashSet<string> used = new(StringComparer.Ordinal);
        for (var row = 0; row < elements.Count; row++)
        {
            if (!choice.IsLeftOut(row) && elements.Cell(row, ElementTable.PartType) is { } type)
            {
                used.Add(type);
            }
        }

        var types = standard.Table(PartTypeTable.Definition);
        for (var row = 0; row < types.Count; row++)
        {
            var type = types.Cell(row, PartTypeTable.PartType)!;
            if (!used.Contains(type) || draft.IdOf(PartTypeTable.Definition, type) != 0)
            {
                used.Remove(type);
                continue;
            }

            draft.Add(
                PartTypeTable.Definition,
                (PartTypeTable.PartType, type),
                (PartTypeTable.Name, types.Cell(row, PartTypeTable.Name))
            );
        }

        var sets = standard.Table(WorkSetTable.Definition);
        for (var row = 0; row < sets.Count; row++)
        {
            if (used.Contains(sets.Cell(row, WorkSetTable.PartType)!))
            {
                var id = draft.Add(WorkSetTable.Definition);
                Fill(sets, row, id, sets.Columns);
            }
        }
    }

    private void AddElements()
    {
        ColumnDefinition[] cells = [.. elements.Columns.Except(Placed)];
        for (var row = 0; row < elements.Count; row++)
        {
            if (choice.IsLeftOut(row))
            {
                continue;
            }

            var code = elements.Cell(row, ElementTable.Code)!;
            var name = elements.Cell(row, ElementTable.Name)!;
            if (row == 0)
            {
                AddRoot(code, name, cells);
                continue;
            }

            var above = elements.Cell(row, ElementTable.Parent)!;
            var parent = ids[above];
            var id = draft.Breakdown.Add(
                parent,
                int.MaxValue,
                name,
                KeepsCodes && draft.IdOf(ElementTable.Definition, code) == 0
                    ? code
                    : codes.Next(parent, levels[above])
            );
            ids[code] = id;
            levels[code] = levels[above] + 1;
            Fill(elements, row, id, cells);
            if (choice.HasLostItsChildren(row))
            {
                draft.Set(ElementTable.Kind, id, "branch");
            }
        }
    }

    /// <summary>A project that begins with the standard and has no form of codes of its own takes those of the standard.</summary>
    private bool KeepsCodes => under == 0 && draft.Before.Settings.CodeMask.Length == 0;

    private void AddRoot(string code, string name, ColumnDefinition[] cells)
    {
        levels[code] = under == 0 ? 1 : draft.Breakdown.Level(under);
        if (under == 0)
        {
            var own = draft.Before.Settings;
            ids[code] = draft.Breakdown.AddRoot(
                own.Code.Length > 0 ? own.Code : code,
                own.Name.Length > 0 ? own.Name : name
            );
            Fill(elements, 0, ids[code], cells);
            return;
        }

        ids[code] = under;
        if (draft.Text(ElementTable.Split, under) is null)
        {
            draft.Set(ElementTable.Split, under, elements.Cell(0, ElementTable.Split));
        }
    }

    /// <summary>What belongs to elements: reasons, techniques, weights of milestones, norms; and words.</summary>
    private void AddRows()
    {
        foreach (
            var definition in ProjectLayout.Tables.Where(table =>
                table != ElementTable.Definition
                && ProjectStandard
                    .Columns(table)
                    .Any(column => column.Targets.Contains("elements", StringComparer.Ordinal))
            )
        )
        {
            var table = standard.Table(definition);
            for (var row = 0; row < table.Count; row++)
            {
                if (
                    table
                        .Columns.Where(IsOfElements)
                        .All(column =>
                            table.Cell(row, column) is not { } code || ids.ContainsKey(code)
                        )
                )
                {
                    Fill(table, row, draft.Add(definition), table.Columns);
                }
            }
        }

        AddWords();
    }

    private void AddWords()
    {
        var words = standard.Table(SplitWordTable.Definition);
        var known = draft.Before[SplitWordTable.Definition];
        var text = new ProjectText(draft.Before);
        var keys = Enumerable
            .Range(0, known.Count)
            .Select(row =>
                (known.Texts(SplitWordTable.Word)[row], text.Of(known, row, SplitWordTable.Role))
            )
            .ToHashSet();
        for (var row = 0; row < words.Count; row++)
        {
            if (
                !keys.Contains(
                    (words.Cell(row, SplitWordTable.Word), words.Cell(row, SplitWordTable.Role))
                )
            )
            {
                Fill(words, row, draft.Add(SplitWordTable.Definition), words.Columns);
            }
        }
    }

    private void NoteLeftOut()
    {
        foreach (var (row, reason) in choice.Reasons)
        {
            draft.Add(
                LeftOutTable.Definition,
                (
                    LeftOutTable.Element,
                    draft.CodeOf(
                        ElementTable.Definition,
                        ids[elements.Cell(row, ElementTable.Parent)!]
                    )
                ),
                (LeftOutTable.Part, elements.Cell(row, ElementTable.Name)),
                (LeftOutTable.Reason, reason),
                (LeftOutTable.Standard, standard.Name)
            );
        }
    }

    private static bool IsOfElements(ColumnDefinition column) =>
        column.Targets.Contains("elements", StringComparer.Ordinal);

    private void Fill(StandardTable table, int row, int id, IEnumerable<ColumnDefinition> columns)
    {
        foreach (var column in columns)
        {
            if (table.Cell(row, column) is not { } text)
            {
                continue;
            }

            try
            {
                draft.Set(
                    column,
                    id,
                    IsOfElements(column) ? draft.CodeOf(ElementTable.Definition, ids[text]) : text
                );
            }
            catch (EditException wrong)
            {
                faults.AddRange(wrong.Faults);
            }
        }
    }

    private void Fault(
        int row,
        ColumnDefinition column,
        string value,
        string expected,
        string message
    ) =>
        faults.Add(
            new EditFault(
                standard.Name,
                elements.Cell(row, ElementTable.Code),
                column.Name,
                InputErrors.Shorten(value),
                expected,
                message
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
