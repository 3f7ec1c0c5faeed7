using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>Parts of a standard breakdown that were left out when it was taken over, with the reason.</summary>
public static class LeftOutTable
{
    public static readonly ColumnDefinition Element = Layout.Reference(
        "element",
        "elements",
        "an element",
        "The element below which it would stand.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Part = Layout.Text(
        "part",
        "Name of the part that was left out, with all that is below it.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Reason = Layout.Text(
        "reason",
        "Why it does not apply here.",
        required: true
    );

    public static readonly ColumnDefinition Standard = Layout.Text(
        "standard",
        "Name of the standard breakdown that has it."
    );

    public static readonly TableDefinition Definition = new(
        "left_out",
        "A part of a standard breakdown that does not apply.",
        Element,
        Part,
        Reason,
        Standard
    );
}
