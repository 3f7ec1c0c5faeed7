namespace Plenum.Web.Host;

/// <summary>How much may be brought in one import on the page.</summary>
public static class UploadLimits
{
    /// <summary>1 GB: five million ledger rows take about 400 MB as CSV.</summary>
    public const long MostBytes = 1L << 30;

    /// <summary>Most files of one import.</summary>
    public const int MostFiles = 200;

    /// <summary>What is said when it is more.</summary>
    public const string TooMuch =
        "At most 1 GB comes in one import. Bring the tables in several, or by the command plenum import.";
}
