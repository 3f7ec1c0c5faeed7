using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>What a command would do.</summary>
public static class EditTrial
{
    /// <summary>The value that a command would make, and the rows that would change; nothing is written.</summary>
    /// <exception cref="EditException">Something is wrong with it.</exception>
    public static (Project Next, IReadOnlyList<TableChange> Changes) Of(
        Project project,
        EditCommand command
    )
    {
        var draft = Draft(project, command);
        return EditFinish.Of(draft) ?? (project, []);
    }

    /// <summary>The rows that a command would write; what holds for the project as a whole is not checked.</summary>
    internal static EditDraft Draft(Project project, EditCommand command)
    {
        var draft = new EditDraft(project, IdBook.Of(project));
        command.Apply(draft);
        return draft;
    }
}
