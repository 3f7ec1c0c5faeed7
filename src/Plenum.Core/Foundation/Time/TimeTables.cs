using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Foundation.Time;

/// <summary>Working calendars.</summary>
public static class CalendarTable
{
    public static readonly ColumnDefinition Calendar = Layout.CodeKey(
        "calendar",
        "Code of the calendar."
    );

    public static readonly ColumnDefinition Working = Layout.Word(
        "working",
        WeekPatternCodec.Instance,
        "Seven marks Monday to Sunday, 1 for a working day: 1111100.",
        required: true
    );

    public static readonly ColumnDefinition Name = Layout.Text("name", "Name of the calendar.");

    public static readonly TableDefinition Definition = new(
        "calendars",
        "A calendar and its working week.",
        Calendar,
        Working,
        Name
    );
}

/// <summary>Dated exceptions of calendars.</summary>
public static class CalendarDayTable
{
    public static readonly ColumnDefinition Calendar = Layout.Reference(
        "calendar",
        "calendars",
        "a calendar",
        "The calendar that the exception belongs to.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Date = Layout.Date(
        "date",
        "The day.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Working = Layout.Flag(
        "working",
        "1 if the day is worked although the week says no, 0 if it is not worked although the week says yes.",
        required: true
    );

    public static readonly ColumnDefinition Note = Layout.Text("note", "Why.");

    public static readonly TableDefinition Definition = new(
        "calendar_days",
        "A day on which a calendar's week does not hold.",
        Calendar,
        Date,
        Working,
        Note
    );
}

/// <summary>Reporting periods.</summary>
public static class PeriodTable
{
    public static readonly ColumnDefinition Period = Layout.CodeKey(
        "period",
        "Code of the period."
    );

    public static readonly ColumnDefinition End = Layout.Date(
        "end",
        "Last day, inclusive. The first period begins at the project's start, each other on the day after the one before.",
        required: true
    );

    public static readonly TableDefinition Definition = new(
        "periods",
        "A reporting period.",
        Period,
        End
    );
}
