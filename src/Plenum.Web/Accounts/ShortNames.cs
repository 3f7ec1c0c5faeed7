namespace Plenum.Web.Accounts;

/// <summary>People's names where there is little room.</summary>
public static class ShortNames
{
    /// <summary>First letter and last name: "Olga Varga" becomes "O. Varga".</summary>
    public static string Of(string name)
    {
        var space = name.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 ? $"{name[0]}. {name[(space + 1)..]}" : name;
    }
}
