using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary>What <c>plenum network --since</c> and <c>--against</c> print: the dates that have moved, and why.</summary>
internal static class NetworkMoves
{
    private const int WidestName = 44;
    private const int WidestCause = 70;
    private const int MostRows = 40;

    public static void WriteJson(CliContext context, MovesAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteNumber("revision", answer.Revision);
                json.WriteNumber("revision_before", answer.Before.Dates.Revision);
                json.Date("at", answer.StatusAfter);
                json.Date("at_before", answer.StatusBefore);
                json.Date("finish", answer.FinishAfter);
                json.Date("finish_before", answer.FinishBefore);
                json.WriteStartArray("changes");
                foreach (var row in answer.Changes)
                {
                    json.WriteStartObject();
                    json.WriteNumber("change", row.Number);
                    json.WriteString("kind", ChangeSentence.Word(row.Change.Kind));
                    json.WriteString("activity", row.Change.Activity);
                    json.WriteString("to", row.Change.To);
                    json.WriteString("what", ChangeSentence.Of(row.Change));
                    json.WriteNumber("moved", row.Moved);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("moved");
                foreach (var row in answer.Activities)
                {
                    WriteMove(json, row);
                }

                json.WriteEndArray();
            }
        );

    public static void WriteText(CliContext context, MovesAnswer answer)
    {
        var moved = answer.Activities.ToList();
        var changes = answer.Changes.ToList();
        context.Out.WriteLine(Ends(answer));
        if (moved.Count == 0)
        {
            context.Out.WriteLine("No early date has moved.");
            return;
        }

        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Early dates have moved for {moved.Count} of {answer.After.Dates.Count} activities: {moved.Count(row => row.WorkDays > 0)} end later, {moved.Count(row => row.WorkDays < 0)} earlier."
            )
        );
        if (answer.Ender is { } ender)
        {
            context.Out.WriteLine(
                $"{ender.Code} ends it; it moved because of {Because(changes, ender)}."
            );
        }

        context.Out.WriteLine();
        WriteChanges(context, changes);
        WriteMoves(context, changes, moved);
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static void WriteMove(Utf8JsonWriter json, MoveRow row)
    {
        json.WriteStartObject();
        json.WriteString("activity", row.Code);
        json.WriteString("package", row.Package);
        json.WriteString("name", row.Name);
        json.Date("early_start_before", row.StartBefore);
        json.Date("early_start", row.StartAfter);
        json.Date("early_finish_before", row.FinishBefore);
        json.Date("early_finish", row.FinishAfter);
        json.WriteNumber("work_days", row.WorkDays);
        json.WriteStartArray("because");
        foreach (var (change, days) in row.Because)
        {
            json.WriteStartObject();
            json.WriteNumber("change", change);
            json.WriteNumber("work_days", days);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Ends(MovesAnswer answer)
    {
        if (answer.FinishAfter is not { } now || answer.FinishBefore is not { } was)
        {
            return "There is no activity and no package yet.";
        }

        var days =
            answer.Before.Input.Calendars[0].NumberOf(now)
            - answer.Before.Input.Calendars[0].NumberOf(was);
        return days == 0
            ? $"It ends on {Amounts.Day(now)}, as before."
            : $"It ends on {Amounts.Day(now)}; before it was {Amounts.Day(was)}: {Days(Math.Abs(days))} {(days > 0 ? "later" : "earlier")}.";
    }

    private static void WriteChanges(CliContext context, List<ChangeRow> changes)
    {
        context.Out.WriteLine("What has changed, what moved most first:");
        var table = new TextTable(">No.", "Change", ">Activities moved");
        var telling = changes
            .Where(row => row.Moved > 0)
            .OrderByDescending(row => row.Moved)
            .ToList();
        foreach (var row in telling.Take(MostRows))
        {
            table.Row(
                Amounts.Count(row.Number),
                TextTable.Cut(ChangeSentence.Of(row.Change), WidestCause),
                Amounts.Count(row.Moved)
            );
        }

        table.Write(context.Out);
        More(context, telling.Count - MostRows);
        if (changes.Count > telling.Count)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{changes.Count - telling.Count} more changes moved nothing."
                )
            );
        }

        context.Out.WriteLine();
    }

    private static void WriteMoves(CliContext context, List<ChangeRow> changes, List<MoveRow> moved)
    {
        context.Out.WriteLine("What has moved, the most first:");
        var table = new TextTable(
            "Activity",
            "Finish before",
            "Finish now",
            ">Working days",
            "Because of"
        );
        foreach (var row in moved.OrderByDescending(row => Math.Abs(row.WorkDays)).Take(MostRows))
        {
            table.Row(
                TextTable.Cut((row.Code + " " + row.Name).TrimEnd(), WidestName),
                Amounts.Day(row.FinishBefore),
                Amounts.Day(row.FinishAfter),
                Signed(row.WorkDays),
                TextTable.Cut(Because(changes, row), WidestCause)
            );
        }

        table.Write(context.Out);
        More(context, moved.Count - MostRows);
    }

    private static string Because(List<ChangeRow> changes, MoveRow row)
    {
        var causes = row.Because.OrderByDescending(cause => Math.Abs(cause.WorkDays)).ToList();
        return causes.Count == 1
            ? ChangeSentence.Of(changes[causes[0].Change - 1].Change)
            : string.Join(
                ", ",
                causes.Select(cause =>
                    $"{Signed(cause.WorkDays)} no. {Amounts.Count(cause.Change)}"
                )
            );
    }

    private static void More(CliContext context, int more)
    {
        if (more > 0)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"… and {more} more; --json has them all."
                )
            );
        }
    }

    private static string Days(int days) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{days} working {(days == 1 ? "day" : "days")}"
        );

    private static string Signed(int days) =>
        days == 0
            ? "0"
            : (days < 0 ? "\u2212" : "+") + Math.Abs(days).ToString(CultureInfo.InvariantCulture);
}
