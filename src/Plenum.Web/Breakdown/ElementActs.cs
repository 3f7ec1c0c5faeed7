using System.Text;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Web.Breakdown;

/// <summary>What can be done to an element from the outline, by the words that keys and buttons share.</summary>
public static class ElementActs
{
    /// <summary>The command of a word; null if the word is none of an edit.</summary>
    public static EditCommand? Command(Project project, string word, int position)
    {
        var id = project.Tree.Elements.Ids[position];
        return word switch
        {
            "up" => new StepElementCommand(id, Step.Up),
            "down" => new StepElementCommand(id, Step.Down),
            "in" => new StepElementCommand(id, Step.LevelDown),
            "out" => new StepElementCommand(id, Step.LevelUp),
            "repeat" => new RepeatForSistersCommand(id),
            "remove" => new RemoveElementsCommand([id]),
            "renumber" => new RenumberCommand(id),
            "package" => TurnPackage(project, position),
            "merge" => new MergeElementsCommand(SisterBefore(project, position) ?? id, [id]),
            _ => null,
        };
    }

    /// <summary>The element to go to once another is removed: the next sister, else the one before, else the parent.</summary>
    /// <param name="project">The project with the element.</param>
    /// <param name="position">Its position.</param>
    /// <param name="toSisterBefore">It goes up in the sister before it.</param>
    public static int NextAfterRemoval(Project project, int position, bool toSisterBefore = false)
    {
        var tree = project.Tree;
        var ids = tree.Elements.Ids;
        var parent = tree.Parent[position];
        if (parent < 0)
        {
            return ids[position];
        }

        var next = tree.SubtreeEnd[position];
        return !toSisterBefore && next < tree.SubtreeEnd[parent]
            ? ids[next]
            : SisterBefore(project, position) ?? ids[parent];
    }

    /// <summary>Id of the sister before an element; null for the first.</summary>
    private static int? SisterBefore(Project project, int position)
    {
        var tree = project.Tree;
        int? before = null;
        if (tree.Parent[position] is var parent and >= 0)
        {
            for (var child = parent + 1; child < position; child = tree.SubtreeEnd[child])
            {
                before = tree.Elements.Ids[child];
            }
        }

        return before;
    }

    /// <summary>An element with all below it as a list indented by tabs.</summary>
    public static string AsList(Project project, int position)
    {
        var tree = project.Tree;
        var text = new StringBuilder();
        for (var row = position; row < tree.SubtreeEnd[position]; row++)
        {
            text.Append('\t', tree.Level[row] - tree.Level[position])
                .Append(tree.Name(row).ReplaceLineEndings(" "))
                .Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A leaf that is still to be broken down becomes a package, and a package the other way round.</summary>
    private static SetCellCommand TurnPackage(Project project, int position)
    {
        var tree = project.Tree;
        var isPackage = tree.PackageOfRow[position] >= 0;
        var elements = tree.Elements;
        var seen = elements.Ints(ElementTable.Kind)[position];
        return new SetCellCommand(
            new CellText(
                elements.Definition.Name,
                elements.Ids[position],
                ElementTable.Kind.Name,
                isPackage ? "branch" : "work_package",
                Cell.IsGiven(seen) ? ElementTable.Kinds.Format(seen) : null
            )
        );
    }
}
