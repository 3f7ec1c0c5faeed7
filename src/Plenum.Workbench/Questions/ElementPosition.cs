using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;

namespace Plenum.Workbench.Questions;

/// <summary>Finds the element that a question names.</summary>
internal static class ElementPosition
{
    /// <summary>The position of a code; −1 for none.</summary>
    /// <exception cref="QuestionException">No element has the code.</exception>
    public static int Of(Project project, string? code)
    {
        if (code is null)
        {
            return -1;
        }

        var elements = project[ElementTable.Definition];
        var row = elements.RowOfCode(code);
        if (row >= 0)
        {
            return row;
        }

        var nearest = NearestWord.Of(code, elements.Codes.ToArray().OfType<string>());
        throw new QuestionException(
            $"No element has the code \"{code}\"."
                + (
                    nearest is not null ? $" Did you mean {nearest}?"
                    : elements.Count == 0 ? " Nothing is broken down yet."
                    : " The breakdown lists all codes."
                )
        );
    }
}
