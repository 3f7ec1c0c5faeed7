namespace Plenum.Web.Accounts;

/// <summary>What the side sheet looks into.</summary>
/// <param name="By">account or element.</param>
/// <param name="Code">Its code.</param>
public sealed record InsideOf(string By, string Code);
