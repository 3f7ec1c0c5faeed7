using Plenum.Core;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Begins an empty project: what holds for it as a whole, and its root.</summary>
/// <param name="Name">Its name, and that of the root.</param>
/// <param name="Code">Its code, and that of the root; empty for 0.</param>
/// <param name="Currency">Its currency, ISO 4217.</param>
/// <param name="Start">Its first day; null if it is not known yet.</param>
/// <param name="CodeMask">The form of codes by level, such as 00.0.00.0; empty for none.</param>
public sealed record BeginProjectCommand(
    string Name,
    string Code,
    string Currency,
    string? Start,
    string CodeMask
) : EditCommand
{
    public override string Tell(Project before) => $"begin the project {Name.Trim()}";

    protected internal override void Apply(EditDraft draft)
    {
        if (draft.Breakdown.Root != 0)
        {
            throw new EditException(
                "The project has a root already.",
                "a project without elements"
            );
        }

        Say(draft, "name", Name.Trim());
        Say(draft, "code", Code.Trim());
        Say(draft, "currency", Currency.Trim());
        Say(draft, "start", Start?.Trim());
        Say(draft, "code_mask", CodeMask.Trim());
        draft.Breakdown.AddRoot(Code.Trim().Length > 0 ? Code.Trim() : "0", Name.Trim());
    }

    private static void Say(EditDraft draft, string key, string? value)
    {
        var known = draft.IdOf(ProjectTable.Definition, key);
        if (string.IsNullOrEmpty(value))
        {
            return;
        }

        if (known > 0)
        {
            draft.Set(ProjectTable.Value, known, value);
        }
        else
        {
            draft.Add(
                ProjectTable.Definition,
                (ProjectTable.Key, key),
                (ProjectTable.Value, value)
            );
        }
    }
}
