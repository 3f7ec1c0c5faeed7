using System.Globalization;
using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>Begins a revision of the scope statement as a draft; one draft at a time.</summary>
/// <param name="Revision">Its number or letter; null for the next.</param>
/// <param name="Note">What it is about.</param>
public sealed record BeginRevisionCommand(string? Revision = null, string? Note = null)
    : EditCommand
{
    public override string Tell(Project before) =>
        $"begin revision {Revision ?? Next(Newest(before))} of the scope statement";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        var newest =
            statement.Newest == 0
                ? null
                : draft.CodeOf(ScopeRevisionTable.Definition, statement.Newest);
        if (statement.IsDraft)
        {
            throw new EditException(
                $"Revision {newest} is in draft already. Sign it before the next begins.",
                "no revision in draft"
            );
        }

        var code = string.IsNullOrEmpty(Revision) ? Next(newest) : Revision;
        if (newest is not null && NaturalOrder.Codes.Compare(code, newest) <= 0)
        {
            throw new EditException([
                new EditFault(
                    ScopeRevisionTable.Definition.Name,
                    code,
                    ScopeRevisionTable.Revision.Name,
                    code,
                    $"a number or letter after {newest}",
                    $"{code} does not come after revision {newest}."
                ),
            ]);
        }

        draft.Add(
            ScopeRevisionTable.Definition,
            (ScopeRevisionTable.Revision, code),
            (ScopeRevisionTable.Note, Note)
        );
    }

    /// <summary>The revision after one: 3 after 2, C after B, 1 after none.</summary>
    public static string Next(string? newest) =>
        newest switch
        {
            null => "1",
            [>= 'A' and < 'Z' or >= 'a' and < 'z'] => ((char)(newest[0] + 1)).ToString(),
            _ when int.TryParse(
                    newest,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var number
                ) => (number + 1).ToString(CultureInfo.InvariantCulture),
            _ => newest + ".1",
        };

    private static string? Newest(Project project) =>
        project[ScopeRevisionTable.Definition].Codes.ToArray().Max(NaturalOrder.Codes);
}

/// <summary>Notes that the draft revision was signed; from then on items change in the next one only.</summary>
/// <param name="Signed">On which day.</param>
public sealed record SignRevisionCommand(DateOnly Signed) : EditCommand
{
    public override string Tell(Project before) =>
        $"sign the scope statement on {Signed.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        if (!statement.IsDraft)
        {
            throw new EditException(
                "No revision of the scope statement is in draft; there is nothing to sign.",
                "a revision in draft"
            );
        }

        foreach (var other in statement.Rows(ScopeRevisionTable.Definition))
        {
            if (
                draft.Text(ScopeRevisionTable.Signed, other) is { } day
                && string.CompareOrdinal(day, Text(Signed)) > 0
            )
            {
                throw new EditException([
                    new EditFault(
                        ScopeRevisionTable.Definition.Name,
                        draft.CodeOf(ScopeRevisionTable.Definition, statement.Newest),
                        ScopeRevisionTable.Signed.Name,
                        Text(Signed),
                        $"{day} or later",
                        $"Revision {draft.CodeOf(ScopeRevisionTable.Definition, other)} was signed later, on {day}."
                    ),
                ]);
            }
        }

        draft.Set(ScopeRevisionTable.Signed, statement.Newest, Text(Signed));
    }

    private static string Text(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
