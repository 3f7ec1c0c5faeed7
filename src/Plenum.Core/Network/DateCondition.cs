namespace Plenum.Core.Network;

/// <summary>A date condition that limits late dates.</summary>
public enum DateCondition
{
    StartNoLater,
    FinishNoLater,
    StartOn,
    FinishOn,
}

/// <summary>Date conditions by their columns.</summary>
public static class DateConditions
{
    /// <summary>The name of the column that gives it.</summary>
    public static string ColumnName(this DateCondition condition) =>
        condition switch
        {
            DateCondition.StartNoLater => ActivityTable.StartNoLater.Name,
            DateCondition.FinishNoLater => ActivityTable.FinishNoLater.Name,
            DateCondition.StartOn => ActivityTable.StartOn.Name,
            _ => ActivityTable.FinishOn.Name,
        };

    /// <summary>Its date for an activity that has it.</summary>
    public static DateOnly DateOf(
        this DateCondition condition,
        ActivityConditions conditions,
        int activity
    )
    {
        var days = condition switch
        {
            DateCondition.StartNoLater => conditions.StartNoLater,
            DateCondition.FinishNoLater => conditions.FinishNoLater,
            DateCondition.StartOn => conditions.StartOn,
            _ => conditions.FinishOn,
        };
        return DateOnly.FromDayNumber(days[activity]);
    }
}
