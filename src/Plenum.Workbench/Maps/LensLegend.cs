namespace Plenum.Workbench.Maps;

/// <summary>A class of a lens: one entry of the legend.</summary>
/// <param name="Key">A stable word for it, such as <c>far_worse</c>.</param>
/// <param name="Word">What the legend, the tooltip and the screen reader say.</param>
/// <param name="Fill">Token of its colour, such as <c>fav2</c>.</param>
/// <param name="Pattern">plain, ruled or dotted; null where the colour decides.</param>
/// <param name="Glyph">The split logic whose sign is drawn; null for none.</param>
/// <param name="Listed">False for a class that the legend leaves out, because no element has it.</param>
public sealed record LensClass(
    string Key,
    string Word,
    string Fill,
    string? Pattern = null,
    string? Glyph = null,
    bool Listed = true
);

/// <summary>What the colours of a lens mean.</summary>
/// <param name="Name">What the lens shows, such as "Cost variance".</param>
/// <param name="Classes">In stack order, favourable first; an element's class is a position in it.</param>
/// <param name="Findings">True where the audit's findings are marked.</param>
/// <param name="Outlines">True where control accounts are outlined.</param>
public sealed record LensLegend(
    string Name,
    IReadOnlyList<LensClass> Classes,
    bool Findings = false,
    bool Outlines = true
);
