using Plenum.Workbench.Questions;

namespace Plenum.Web.Breakdown;

/// <summary>A row of the outline as it is drawn: a line, or the place of the line that somebody types in.</summary>
/// <param name="Line">The line; null for the place to type in.</param>
/// <param name="Level">Level of what stands there.</param>
public readonly record struct OutlineItem(OutlineLine? Line, int Level);
