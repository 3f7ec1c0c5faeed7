using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>Activities of packages.</summary>
public static class ActivityTable
{
    public const int LongestDuration = 100_000;

    public static readonly ColumnDefinition Activity = Layout.CodeKey(
        "activity",
        "Code of the activity."
    );

    public static readonly ColumnDefinition Package = Layout.Reference(
        "package",
        "elements",
        "a package",
        "The package that it belongs to.",
        required: true
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name.");

    public static readonly ColumnDefinition Duration = Layout.Whole(
        "duration",
        "Working days; 0 for a milestone.",
        0,
        LongestDuration,
        required: true
    );

    public static readonly ColumnDefinition Calendar = Layout.Reference(
        "calendar",
        "calendars",
        "a calendar",
        "Its calendar; the project's where none is named."
    );

    public static readonly ColumnDefinition StartNoEarlier = Layout.Date(
        "start_no_earlier",
        "Starts no earlier than."
    );
    public static readonly ColumnDefinition StartNoLater = Layout.Date(
        "start_no_later",
        "Starts no later than."
    );
    public static readonly ColumnDefinition FinishNoEarlier = Layout.Date(
        "finish_no_earlier",
        "Finishes no earlier than."
    );
    public static readonly ColumnDefinition FinishNoLater = Layout.Date(
        "finish_no_later",
        "Finishes no later than."
    );
    public static readonly ColumnDefinition StartOn = Layout.Date("start_on", "Starts on.");
    public static readonly ColumnDefinition FinishOn = Layout.Date("finish_on", "Finishes on.");

    public static readonly ColumnDefinition RequiredBy = Layout.Date(
        "required_by",
        "Contract date that is tested and moves nothing."
    );

    public static readonly ColumnDefinition Low = Layout.Whole(
        "low",
        "Working days, low.",
        0,
        LongestDuration
    );
    public static readonly ColumnDefinition High = Layout.Whole(
        "high",
        "Working days, high.",
        0,
        LongestDuration
    );

    public static readonly TableDefinition Definition = new(
        "activities",
        "An activity of a package. A package without activities is one activity with the package's code.",
        Activity,
        Package,
        Name,
        Duration,
        Calendar,
        StartNoEarlier,
        StartNoLater,
        FinishNoEarlier,
        FinishNoLater,
        StartOn,
        FinishOn,
        RequiredBy,
        Low,
        High
    );
}

/// <summary>Links between activities.</summary>
public static class LinkTable
{
    public const int LongestLag = 100_000;

    public static readonly WordCodec Types = new("FS", "SS", "FF", "SF");

    public static readonly ColumnDefinition From = Layout.Reference(
        "from",
        ["activities", "elements"],
        "an activity or a package",
        "The predecessor: an activity, or a package that has no activities.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition To = Layout.Reference(
        "to",
        ["activities", "elements"],
        "an activity or a package",
        "The successor.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Type = Layout.Word(
        "type",
        Types,
        "FS, SS, FF or SF; FS where the column is absent or empty.",
        key: true,
        emptyMeans: 0
    );

    public static readonly ColumnDefinition Lag = Layout.Whole(
        "lag",
        "Working days of the predecessor's calendar; negative for a lead; 0 where none is given.",
        -LongestLag,
        LongestLag
    );

    public static readonly TableDefinition Definition = new(
        "links",
        "A link between two activities.",
        From,
        To,
        Type,
        Lag
    );
}
