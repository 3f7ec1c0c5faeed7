using Plenum.Core.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>What the matrix of parts by activities says, in words.</summary>
public static class PartsSentence
{
    public static string Of(PartsAnswer answer)
    {
        if (answer.IsEmpty)
        {
            return "Nothing is broken down yet.";
        }

        if (answer.Parts == 0)
        {
            return answer.WithoutType == 0
                ? $"{answer.Name} has no parts yet that could be given a type."
                : $"No part of {answer.Name} has a type with a work set yet; {Counted(answer.WithoutType, "part waits", "parts wait")} for one.";
        }

        var undecided = answer.Cells - answer.Decided;
        var here =
            undecided == 0
                ? $"All {Amounts.Count(answer.Cells)} cells of {answer.Name} are decided."
                : $"{Counted(answer.Decided, "cell", "cells")} decided, {Amounts.Count(undecided)} missing in {answer.Name}.";
        var (decided, cells) = answer.Whole;
        return answer.Under == 0
            ? here
            : $"{here} In the whole project {Amounts.Count(decided)} decided, {Amounts.Count(cells - decided)} missing.";
    }

    /// <summary>What stands in a cell, for readers who hear it.</summary>
    public static string Of(PartsCell? cell) =>
        cell switch
        {
            null => "not of its type",
            { State: ActivityState.Planned } => $"planned, {Whole(cell.Hours)}",
            { State: ActivityState.NotNeeded } => $"not needed: {cell.Reason}",
            { State: ActivityState.Both } =>
                $"both planned with {Whole(cell.Hours)} and ruled out: {cell.Reason}",
            _ => "missing",
        };

    /// <summary>The question to the person in charge, to be sent by whoever asks.</summary>
    public static string Ask(PartCellAnswer cell)
    {
        var who = cell.Person is { } person ? $"{person}, " : "";
        var sisters =
            cell.Planned == 0
                ? ""
                : $" {Counted(cell.Planned, "sister has", "sisters have")} it planned"
                    + (cell.Median is { } median ? $", usually with {Hours(median)}." : ".");
        return $"{who}{cell.PartCode} {cell.PartName} ({cell.ParentName}) has no {Lower(cell.Activity)}: nobody has planned it or ruled "
            + $"it out.{sisters} Is it needed, and if so with how many hours; or why is it not needed?";
    }

    /// <summary>As many digits as a cell shows: what is heard and what is seen are the same.</summary>
    private static string Whole(decimal hours) => Amounts.Count(hours) + "\u202Fh";

    /// <summary>Hours with their unit: "88 h".</summary>
    public static string Hours(decimal hours) =>
        (
            hours == decimal.Truncate(hours)
                ? Amounts.Count(hours)
                : hours.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)
        ) + "\u202Fh";

    /// <summary>An activity within a sentence: its first letter is small unless the word is an abbreviation.</summary>
    public static string Lower(string activity) =>
        activity.Length > 1 && char.IsUpper(activity[0]) && char.IsLower(activity[1])
            ? char.ToLowerInvariant(activity[0]) + activity[1..]
            : activity;

    private static string Counted(int count, string one, string many) =>
        $"{Amounts.Count(count)} {(count == 1 ? one : many)}";
}
