using Plenum.Core;
using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>Gives new codes to all below an element, by their places and the project's mask.</summary>
public sealed record RenumberCommand(int Id) : EditCommand
{
    public override string Tell(Project before) => $"renumber below {Elements.Say(before, Id)}";

    protected internal override void Apply(EditDraft draft)
    {
        Elements.Need(draft, Id);
        var mask = draft.Before.Settings.CodeMask;
        Renumber(draft, mask, Id, draft.Breakdown.Level(Id));
    }

    private static void Renumber(EditDraft draft, string mask, int parent, int level)
    {
        var waiting = new Stack<(int Id, int Level)>([(parent, level)]);
        while (waiting.TryPop(out var above))
        {
            var family = draft.Breakdown.Children(above.Id);
            var code = draft.CodeOf(ElementTable.Definition, above.Id);
            for (var place = 0; place < family.Count; place++)
            {
                // sisters beyond the mask are as wide as their greatest number
                var form = mask.Length > 0 ? null : Form(code, above.Level, family.Count);
                var given = CodeGiver.Child(mask, code, above.Level, form, place + 1);
                if (draft.CodeOf(ElementTable.Definition, family[place]) != given)
                {
                    draft.Set(ElementTable.Code, family[place], given);
                }

                waiting.Push((family[place], above.Level + 1));
            }
        }
    }

    private static string Form(string parent, int level, int count) =>
        CodeGiver.Child("", parent, level, null, count);
}
