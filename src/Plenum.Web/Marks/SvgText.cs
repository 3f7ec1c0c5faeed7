using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Plenum.Web.Marks;

/// <summary>A text element of a drawing; written as a component because the page language keeps the tag's name for itself.</summary>
public sealed class SvgText : ComponentBase
{
    [Parameter, EditorRequired]
    public double X { get; set; }

    [Parameter, EditorRequired]
    public double Y { get; set; }

    [Parameter, EditorRequired]
    public required string Words { get; set; }

    /// <summary>start, middle or end.</summary>
    [Parameter]
    public string Anchor { get; set; } = "start";

    [Parameter]
    public string? Class { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", X.ToString("0.#", CultureInfo.InvariantCulture));
        builder.AddAttribute(2, "y", Y.ToString("0.#", CultureInfo.InvariantCulture));
        builder.AddAttribute(3, "text-anchor", Anchor);
        builder.AddAttribute(4, "class", Class);
        builder.AddContent(5, Words);
        builder.CloseElement();
    }
}
