namespace Plenum.Workbench.Commands;

/// <summary>A field of a command is the id of a row of a table other than the elements.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class RowOfAttribute(string table) : Attribute
{
    /// <summary>Name of the table.</summary>
    public string Table { get; } = table;
}
