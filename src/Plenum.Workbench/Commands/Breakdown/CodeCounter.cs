using Plenum.Core.Breakdown;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>
/// Gives codes to many new elements: below each parent it counts on, so that ten thousand sisters are not searched ten
/// thousand times for the next free number.
/// </summary>
internal sealed class CodeCounter(EditDraft draft)
{
    private readonly Dictionary<int, int> lastNumber = [];
    private readonly string mask = draft.Before.Settings.CodeMask;

    /// <summary>The next code that is free below a parent.</summary>
    /// <param name="parent">Id of the parent.</param>
    /// <param name="parentLevel">Its level; 1 for the root.</param>
    public string Next(int parent, int parentLevel)
    {
        string code;
        if (!lastNumber.TryGetValue(parent, out var last))
        {
            code = draft.Breakdown.NextCode(parent);
        }
        else
        {
            var above = draft.CodeOf(ElementTable.Definition, parent);
            var sister = draft.CodeOf(ElementTable.Definition, draft.Breakdown.Children(parent)[0]);
            do
            {
                code = CodeGiver.Child(mask, above, parentLevel, sister, ++last);
            } while (draft.IdOf(ElementTable.Definition, code) != 0);
        }

        lastNumber[parent] = CodeGiver.NumberOf(code);
        return code;
    }
}
