using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.People;

/// <summary>The organisation breakdown structure.</summary>
public static class UnitTable
{
    public static readonly ColumnDefinition Unit = Layout.CodeKey(
        "unit",
        "Code of the organisation unit."
    );
    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.");

    public static readonly ColumnDefinition Parent = Layout.Reference(
        "parent",
        "units",
        "an organisation unit",
        "The unit that this one belongs to."
    );

    public static readonly TableDefinition Definition = new(
        "units",
        "An organisation unit.",
        Unit,
        Name,
        Parent
    );
}

/// <summary>People.</summary>
public static class PersonTable
{
    public static readonly ColumnDefinition Person = Layout.CodeKey(
        "person",
        "Code of the person."
    );
    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.");

    public static readonly ColumnDefinition Unit = Layout.Reference(
        "unit",
        "units",
        "an organisation unit",
        "The unit that the person belongs to."
    );

    public static readonly ColumnDefinition Email = Layout.Text("email", "Address.");

    public static readonly TableDefinition Definition = new(
        "people",
        "A person.",
        Person,
        Name,
        Unit,
        Email
    );
}

/// <summary>Control accounts: where an element and an organisation unit meet.</summary>
public static class AccountTable
{
    public static readonly ColumnDefinition Account = Layout.CodeKey(
        "account",
        "Code of the control account."
    );

    public static readonly ColumnDefinition Element = Layout.Reference(
        "element",
        "elements",
        "an element",
        "The element on which it stands.",
        required: true
    );

    public static readonly ColumnDefinition Unit = Layout.Reference(
        "unit",
        "units",
        "an organisation unit",
        "The unit that does the work.",
        required: true
    );

    public static readonly ColumnDefinition Manager = Layout.Reference(
        "manager",
        "people",
        "a person",
        "The control account manager.",
        required: true
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.");

    public static readonly TableDefinition Definition = new(
        "accounts",
        "A control account.",
        Account,
        Element,
        Unit,
        Manager,
        Name
    );
}
