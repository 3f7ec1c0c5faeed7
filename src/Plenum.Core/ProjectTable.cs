using Plenum.Core.Foundation.Tables;

namespace Plenum.Core;

/// <summary>What holds for the whole project, as keys and values.</summary>
public static class ProjectTable
{
    public static readonly ColumnDefinition Key = Layout.CodeKey(
        "key",
        "What is said; see the list of keys."
    );
    public static readonly ColumnDefinition Value = Layout.Text(
        "value",
        "Its value.",
        required: true
    );

    public static readonly TableDefinition Definition = new(
        "project",
        "A setting of the whole project.",
        Key,
        Value
    );
}
