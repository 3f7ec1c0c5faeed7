using Plenum.Core.Breakdown;

namespace Plenum.Web.Marks;

/// <summary>The things that have a sign of their own.</summary>
public enum GlyphKind
{
    Project,
    System,
    Component,
    WorkPackage,
    PlanningPackage,
    ControlAccount,
    Milestone,
    ScopeItem,
}

/// <summary>Kinds of elements as signs and words.</summary>
public static class ElementKinds
{
    /// <summary>A branch right below the project is a system, one further down a component.</summary>
    /// <param name="kind">A number of <see cref="ElementTable.Kinds"/>.</param>
    /// <param name="level">Level of the element, 1 for the root.</param>
    public static GlyphKind Glyph(int kind, int level) =>
        kind switch
        {
            ElementTable.Project => GlyphKind.Project,
            ElementTable.WorkPackage => GlyphKind.WorkPackage,
            ElementTable.PlanningPackage => GlyphKind.PlanningPackage,
            _ => level <= 2 ? GlyphKind.System : GlyphKind.Component,
        };

    public static string Word(int kind) =>
        kind switch
        {
            ElementTable.Project => "project",
            ElementTable.WorkPackage => "work package",
            ElementTable.PlanningPackage => "planning package",
            _ => "branch",
        };
}
