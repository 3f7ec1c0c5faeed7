using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands;

namespace Plenum.Workbench.Questions;

/// <summary>The code that the next part below an element would get.</summary>
/// <param name="Parent">Id of the element.</param>
public sealed record NextCodeQuestion(int Parent)
{
    /// <summary>Null if the element is not there.</summary>
    public string? Ask(Project project) =>
        project[ElementTable.Definition].RowOf(Parent) < 0
            ? null
            : new EditDraft(project, IdBook.Of(project)).Breakdown.NextCode(Parent);
}
