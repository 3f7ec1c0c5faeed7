using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Exchange.Lists;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Questions;

/// <summary>What a pasted list would become below an element.</summary>
/// <param name="Command">The command that would take it over.</param>
public sealed record PasteQuestion(PasteListCommand Command)
{
    /// <summary>Cost: that of the command in a draft.</summary>
    public PasteAnswer Ask(Project project)
    {
        var list = ListReader.Read(Command.List);
        var warnings = list.Warnings.ToLookup(warning => warning.Line, warning => warning.Text);
        string?[] given = new string?[list.Rows.Count];
        IReadOnlyList<EditFault> faults = [];
        if (list.Rows.Count > 0 || list.Errors.Any)
        {
            try
            {
                var draft = EditTrial.Draft(project, Command);
                var added = draft[ElementTable.Definition].Added.ToList();
                for (var row = 0; row < given.Length; row++)
                {
                    given[row] = draft.CodeOf(ElementTable.Definition, added[row]);
                }
            }
            catch (EditException wrong)
            {
                faults = wrong.Faults;
            }
        }

        return new PasteAnswer(
            list.Form,
            [
                .. list.Rows.Select(
                    (row, at) =>
                        new PasteRow(
                            row.Line,
                            row.Level,
                            row.Code ?? given[at],
                            row.Code is null,
                            row.Name,
                            [.. warnings[row.Line]]
                        )
                ),
            ],
            [.. list.Columns.Select(column => column.Name)],
            faults,
            list.Errors.Count > faults.Count ? list.Errors.Count : faults.Count
        );
    }
}

/// <summary>A row of a list as it would be taken over.</summary>
/// <param name="Line">Its line in the list.</param>
/// <param name="Level">Level in the list, from 1.</param>
/// <param name="Code">Its code; null as long as it is not known.</param>
/// <param name="IsCodeNew">The code is given by the project, not by the list.</param>
/// <param name="Name">Its name.</param>
/// <param name="Warnings">What should be looked at.</param>
public sealed record PasteRow(
    int Line,
    int Level,
    string? Code,
    bool IsCodeNew,
    string Name,
    IReadOnlyList<string> Warnings
);

/// <param name="Form">What shows the place of the rows.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Columns">Further columns that the list fills.</param>
/// <param name="Faults">What is wrong, up to 1 000; with any, nothing can be taken over.</param>
/// <param name="FaultCount">How much is wrong.</param>
public sealed record PasteAnswer(
    ListForm Form,
    IReadOnlyList<PasteRow> Rows,
    IReadOnlyList<string> Columns,
    IReadOnlyList<EditFault> Faults,
    long FaultCount
)
{
    public bool CanBeTaken => Rows.Count > 0 && Faults.Count == 0;
}
