using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>A code does not show where the element stands.</summary>
public sealed class CodeRule(ElementTree tree, string mask) : ElementRule(tree)
{
    public override string Name => "code_out_of_place";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "A code shows its place: it begins with its parent's code and adds a part of its own, in the form that the "
        + "project has agreed on.";

    public override string Remedy => "Give it a code under its parent's.";

    public override string Source =>
        "PMI Practice Standard for Work Breakdown Structures, 3rd ed. 2019 (from memory)";

    protected override string? Message(int row)
    {
        var parent = Tree.Parent[row];
        var code = Tree.Code(row);
        // the children of the root may begin anew: the root is often called by the project's short name
        if (parent > 0 && !code.StartsWith(Tree.Code(parent), StringComparison.Ordinal))
        {
            return $"{code} {Tree.Name(row)} stands under {Tree.Code(parent)}, which its code does not show.";
        }

        return mask.Length > 0 && row > 0 && !CodeMask.Fits(mask, code)
            ? $"{code} {Tree.Name(row)} does not have the form {mask}."
            : null;
    }
}

/// <summary>The form of codes by level, such as 00.0.00.0: as many digits or letters for each level, at least.</summary>
public static class CodeMask
{
    /// <summary>
    /// Whether a code has the form of the mask, or of its beginning: each group of its digits and letters is as long as
    /// the mask's at least, and the marks between them are the same. Deeper groups than the mask's are free.
    /// </summary>
    public static bool Fits(string mask, string code)
    {
        var maskAt = 0;
        var codeAt = 0;
        while (codeAt < code.Length)
        {
            if (maskAt >= mask.Length)
            {
                return true;
            }

            var wanted = Group(mask, ref maskAt);
            var found = Group(code, ref codeAt);
            if (found < wanted || found == 0)
            {
                return false;
            }

            var atMark = codeAt < code.Length && maskAt < mask.Length;
            if (atMark && code[codeAt] != mask[maskAt])
            {
                return false;
            }

            codeAt++;
            maskAt++;
        }

        return true;
    }

    private static int Group(string text, ref int at)
    {
        var begin = at;
        while (at < text.Length && char.IsLetterOrDigit(text[at]))
        {
            at++;
        }

        return at - begin;
    }
}
