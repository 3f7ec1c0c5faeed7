using Plenum.Core;

namespace Plenum.Workbench.Maps;

/// <summary>What a lens says of every element of a project value: one class of its legend each.</summary>
public sealed class Lens
{
    private readonly byte[] classOf;
    private readonly Func<int, string> valueText;

    internal Lens(
        Project project,
        LensText text,
        LensLegend legend,
        byte[] classOf,
        Func<int, string>? valueText = null
    )
    {
        Revision = project.Revision;
        Text = text;
        Legend = legend;
        this.classOf = classOf;
        this.valueText = valueText ?? (_ => "");
    }

    /// <summary>Revision of the project that it was made from.</summary>
    public long Revision { get; }

    /// <summary>Its words beside the legend.</summary>
    public LensText Text { get; }

    public LensLegend Legend { get; }

    /// <summary>
    /// True if an element with children shows the mix of the packages below it, false if it has a class of its own.
    /// </summary>
    public bool IsMix { get; internal init; }

    /// <summary>For each element, in depth-first order, a position in the legend's classes.</summary>
    public ReadOnlySpan<byte> ClassOf => classOf;

    /// <summary>The class of the element at a position.</summary>
    public LensClass ClassAt(int row) => Legend.Classes[classOf[row]];

    /// <summary>The value behind the class in figures, such as "−4.1 % of earned value"; empty where there is none.</summary>
    public string ValueText(int row) => valueText(row);

    /// <summary>Class and figures as one phrase, for a tooltip or a screen reader.</summary>
    public string Words(int row) =>
        ValueText(row) is { Length: > 0 } figures
            ? ClassAt(row).Word + ", " + figures
            : ClassAt(row).Word;
}

/// <summary>Words of a lens beside its legend.</summary>
/// <param name="Title">The chapter that it belongs to, such as "Accounts".</param>
/// <param name="Says">What it shows, in one phrase.</param>
/// <param name="At">The day at which everything is taken; null before the first period's end and where no date matters.</param>
public sealed record LensText(string Title, string Says, DateOnly? At);
