using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>A name that could be anything's.</summary>
public sealed class GenericNameRule(ElementTree tree, NameCheck names) : ElementRule(tree)
{
    public override string Name => "generic_name";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "\"Other\" and \"miscellaneous\" are places where work gets lost: nobody can say what is in them and what is not.";

    public override string Remedy =>
        "Name what it is, or give its work to the parts that have a name.";

    public override string Source =>
        "MIL-STD-881F appendices (\"other\" elements are named before use); GAO-20-195G (generic terms)";

    protected override string? Message(int row) =>
        !HasNameOfParent(row) && names.Generic(Tree.Name(row)) is { } word
            ? $"\"{Tree.Name(row)}\" says nothing of what it is (\"{word}\")."
            : null;
}

/// <summary>A name that is a cost class, a meeting, a date or a person.</summary>
public sealed class NotAPartRule(ElementTree tree, NameCheck names, Func<string, bool> isPerson)
    : ElementRule(tree)
{
    public override string Name => "name_not_a_part";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "An element is a piece of the work. Cost classes, meetings, travel, rework, dates and people are no pieces of it: "
        + "they go into the pieces that need them.";

    public override string Remedy =>
        "Put its content where it belongs: cost element, calendar, organisation, or the part that causes it.";

    public override string Source =>
        "MIL-STD-881F and GAO-20-195G (what is not a WBS element); US DOE WBS Handbook 2012 (funding classes), from memory";

    protected override string? Message(int row)
    {
        var name = Tree.Name(row);
        return HasNameOfParent(row) ? null
            : isPerson(name) ? $"\"{name}\" is a person, not a piece of the work."
            : names.NotAPart(name) is { } word ? $"\"{name}\" is no piece of the work (\"{word}\")."
            : null;
    }
}

/// <summary>A name that says what is done instead of what comes of it.</summary>
public sealed class VerbNameRule(ElementTree tree, NameCheck names) : ElementRule(tree)
{
    public override string Name => "named_as_activity";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Elements are named by what they deliver, nouns with adjectives; activities are named by verbs.";

    public override string Remedy => "Name the thing that is there when the work is done.";

    public override string Source =>
        "PMI Practice Standard for Work Breakdown Structures, 3rd ed. 2019 (from memory); GAO-16-89G (activities)";

    protected override string? Message(int row) =>
        !HasNameOfParent(row) && names.Verb(Tree.Name(row)) is { } verb
            ? $"\"{Tree.Name(row)}\" begins with a verb (\"{verb}\"), as an activity does."
            : null;
}

/// <summary>The root has another name than the project.</summary>
public sealed class RootNameRule(ElementTree tree, string projectName) : ElementRule(tree)
{
    public override string Name => "root_name";

    public override Severity Severity => Severity.Note;

    public override string Explanation => "The first level is the whole project and has its name.";

    public override string Remedy => "Give the root the project's name, or correct the project's.";

    public override string Source => "NPR 7120.5D appendix G.3.2";

    protected override string? Message(int row) =>
        row == 0 && projectName.Length > 0 && !NamesAgree(Tree.Name(0), projectName)
            ? $"The root is called \"{Tree.Name(0)}\" and the project \"{projectName}\"."
            : null;

    private static bool NamesAgree(string root, string project) =>
        root.Contains(project, StringComparison.OrdinalIgnoreCase)
        || project.Contains(root, StringComparison.OrdinalIgnoreCase);
}

/// <summary>No element holds the management of the project.</summary>
public sealed class ManagementMissingRule(ElementTree tree, NameCheck names) : ElementRule(tree)
{
    private const int DeepestLevel = 3;
    private const int FewestElements = 10;

    public override string Name => "management_missing";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Managing the project is work and costs money; the whole is not complete without an element that holds it.";

    public override string Remedy =>
        "Add an element for it on level 2, or say in the root's dictionary where it is.";

    public override string Source => "GAO-20-195G; MIL-STD-881F appendix K (common elements)";

    protected override string? Message(int row)
    {
        if (row > 0 || Tree.Count < FewestElements)
        {
            return null;
        }

        for (var other = 0; other < Tree.Count; other++)
        {
            if (
                Tree.Level[other] is > 1 and <= DeepestLevel
                && names.SpeaksOf(SplitWordTable.Management, Tree.Name(other))
            )
            {
                return null;
            }
        }

        return "No element on levels 2 and 3 holds the management of the project.";
    }
}

/// <summary>Software stands apart from the product that it runs.</summary>
public sealed class SoftwareApartRule(ElementTree tree, NameCheck names) : ElementRule(tree)
{
    public override string Name => "software_apart";

    public override Severity Severity => Severity.Note;

    public override string Explanation =>
        "Software belongs to the product that it makes work. On a branch of its own beside the hardware its interfaces "
        + "are in nobody's part.";

    public override string Remedy => "Move it to the part that it runs.";

    public override string Source => "MIL-STD-881F section 3";

    protected override string? Message(int row)
    {
        if (
            Tree.Level[row] != 2
            || !names.IsNothingBut(SplitWordTable.Software, Tree.Name(row))
            || Children(0).Count() < 2
        )
        {
            return null;
        }

        return $"{Tree.Name(row)} stands on level 2, beside the parts that it runs.";
    }
}
