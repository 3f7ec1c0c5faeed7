namespace Plenum.Store;

/// <summary>What marks a file as a Plenum project.</summary>
public static class FormatFacts
{
    /// <summary>In the header of the database: the letters PLNM.</summary>
    public const int ApplicationId = 0x504C4E4D;

    /// <summary>What the names of project files end with.</summary>
    public const string Extension = ".plenum";
}
