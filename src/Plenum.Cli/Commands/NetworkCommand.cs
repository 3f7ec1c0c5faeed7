using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Core.Network;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum network PROJECT [--to ACTIVITY] [--float N] [--since DATE] [--against FILE]</c></summary>
internal static class NetworkCommand
{
    private const int WidestName = 60;
    private const int MostLinks = 20;

    private static readonly Option<string?> To = new("--to")
    {
        Description = "The driving chain to this milestone or activity; without it to the end.",
        HelpName = "MILESTONE",
    };

    private static readonly Option<int?> Float = new("--float")
    {
        Description =
            "List the activities within so many working days above the float of the critical ones.",
        HelpName = "N",
        CustomParser = CommonOptions.WholeNumber(
            0,
            ActivityTable.LongestDuration,
            "--float takes a whole number of working days, such as 10."
        ),
    };

    private static readonly Option<string?> Since = new("--since")
    {
        Description =
            "The dates that have moved since progress was known up to this date (2026-03-31), and why.",
        HelpName = "DATE",
    };

    private static readonly Option<FileInfo?> Against = new("--against")
    {
        Description = "The dates that have moved since an earlier copy of the project, and why.",
        HelpName = "FILE",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command("network", "When it will be done, and what drives that.")
        {
            CommonOptions.Project,
            To,
            Float,
            Since,
            Against,
            CommonOptions.Json,
        };
        command.Validators.Add(result =>
        {
            if (
                (result.GetResult(Since) is not null || result.GetResult(Against) is not null)
                && (result.GetResult(To) is not null || result.GetResult(Float) is not null)
            )
            {
                result.AddError(
                    "--to and --float show the network as it is, --since and --against what has moved: not both at once."
                );
            }
        });
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Network(context, parsed, json, ct)))
        );
        return command;
    }

    private static int Network(
        CliContext context,
        ParseResult parsed,
        bool json,
        CancellationToken ct
    )
    {
        if (parsed.GetValue(Since) is not null || parsed.GetValue(Against) is not null)
        {
            return Moves(context, parsed, json, ct);
        }

        var question = new NetworkQuestion(parsed.GetValue(To), parsed.GetValue(Float));
        using var progress = new ProgressLine(context);
        using var project = context.Open(parsed, progress, ct);
        var answer = question.Ask(project.Current);
        progress.Dispose();
        if (json)
        {
            WriteJson(context, answer);
        }
        else
        {
            WriteText(context, answer);
        }

        return ExitCode.Done;
    }

    private static int Moves(
        CliContext context,
        ParseResult parsed,
        bool json,
        CancellationToken ct
    )
    {
        var since = CliContext.ParseDate(parsed.GetValue(Since));
        using var progress = new ProgressLine(context);
        using var project = context.Open(parsed, progress, ct);
        using var earlier = parsed.GetValue(Against) is { } file
            ? context.Open(file, progress, ct)
            : null;
        var answer = new MovesQuestion(earlier?.Current, since).Ask(project.Current);
        progress.Dispose();
        if (json)
        {
            NetworkMoves.WriteJson(context, answer);
        }
        else
        {
            NetworkMoves.WriteText(context, answer);
        }

        return ExitCode.Done;
    }

    private static void WriteJson(CliContext context, NetworkAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.StatusDate);
                json.WriteString("to", answer.Question.To);
                json.Number("float", answer.Question.Float);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("progress", answer.LogicHolds ? "logic_holds" : "progress_rules");
                json.Date("finish", answer.Finish);
                json.Number("critical_float", answer.CriticalFloat);
                json.WriteNumber("critical_count", answer.CriticalCount);
                json.WriteStartArray("activities");
                foreach (var row in answer.Activities)
                {
                    WriteActivity(json, row);
                }

                json.WriteEndArray();
                json.WriteStartArray("chain");
                foreach (var station in answer.Chain)
                {
                    WriteStation(json, station);
                }

                json.WriteEndArray();
                WriteLinks(json, "broken_links", answer.BrokenLinks);
                WriteLinks(json, "out_of_sequence", answer.OutOfSequence);
            }
        );

    private static void WriteActivity(Utf8JsonWriter json, ActivityRow row)
    {
        json.WriteStartObject();
        json.WriteString("activity", row.Code);
        json.WriteString("package", row.Package);
        json.WriteString("name", row.Name);
        json.WriteNumber("duration", row.Duration);
        json.WriteNumber("remaining", row.Remaining);
        json.WriteBoolean("milestone", row.IsMilestone);
        json.WriteBoolean("started", row.IsStarted);
        json.WriteBoolean("finished", row.IsFinished);
        json.Date("early_start", row.EarlyStart);
        json.Date("early_finish", row.EarlyFinish);
        json.Date("late_start", row.LateStart);
        json.Date("late_finish", row.LateFinish);
        json.Date("resumes", row.WorkResumes);
        json.Number("total_float", row.TotalFloat);
        json.Number("free_float", row.FreeFloat);
        json.Number("interfering_float", row.InterferingFloat);
        json.Number("independent_float", row.IndependentFloat);
        json.WriteBoolean("critical", row.IsCritical);
        json.WriteBoolean("driving", row.IsDriving);
        json.Number("chain", row.ChainPlace);
        json.Date("required_by", row.RequiredBy);
        json.Number("required_float", row.RequiredFloat);
        if (row.Cause is { } cause)
        {
            json.WriteStartObject("negative_float_cause");
            json.WriteString("activity", cause.Activity);
            json.WriteString("condition", cause.Word);
            json.Date("date", cause.Date);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("negative_float_cause");
        }

        json.WriteEndObject();
    }

    private static void WriteStation(Utf8JsonWriter json, ChainRow station)
    {
        var row = station.Activity;
        json.WriteStartObject();
        json.WriteString("activity", row.Code);
        json.Date("early_start", row.EarlyStart);
        json.Date("early_finish", row.EarlyFinish);
        json.Number("total_float", row.TotalFloat);
        json.WriteString("held_by", HolderWord(station.HeldBy));
        json.WriteString("type", station.Leaves?.Type);
        json.Number("lag", station.Leaves?.Lag);
        json.WriteNumber("other_drivers", station.OtherDrivers);
        json.WriteEndObject();
    }

    private static void WriteLinks(Utf8JsonWriter json, string name, IReadOnlyList<LinkRow> links)
    {
        json.WriteStartArray(name);
        foreach (var link in links)
        {
            json.WriteStartObject();
            json.WriteString("from", link.From);
            json.WriteString("to", link.To);
            json.WriteString("type", link.Type);
            json.WriteNumber("lag", link.Lag);
            if (link.WorkDays is { } days)
            {
                json.WriteNumber("work_days", days);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteText(CliContext context, NetworkAnswer answer)
    {
        if (answer.Finish is not { } finish)
        {
            context.Out.WriteLine("There is no activity and no package yet.");
            return;
        }

        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"It ends on {Amounts.Day(finish)}. {Counted(answer.CriticalCount, "activity is", "activities are")} critical{FloatOf(answer)}."
            )
        );
        context.Out.WriteLine(
            answer.StatusDate is { } date
                ? $"Status up to {Amounts.Day(date)}; out-of-sequence work {(answer.LogicHolds ? "waits for its predecessors" : "does not wait")}."
                : "No status date: no progress counts."
        );
        context.Out.WriteLine();
        if (answer.Question.Float is { } band)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Within {band} working days of the critical activities:"
                )
            );
            WriteActivities(context, answer.Activities);
        }
        else
        {
            WriteChain(context, answer);
        }

        WriteBroken(context, answer);
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static string FloatOf(NetworkAnswer answer) =>
        answer.CriticalFloat switch
        {
            null => "",
            0 => ", with no float",
            { } days => string.Create(
                CultureInfo.InvariantCulture,
                $", with a total float of {Signed(days)} working days or less"
            ),
        };

    private static void WriteChain(CliContext context, NetworkAnswer answer)
    {
        context.Out.WriteLine(
            $"What drives {(answer.Question.To is { } to ? to : "the end")}, from the beginning:"
        );
        var table = new TextTable(
            "Activity",
            ">Days",
            "Early start",
            "Early finish",
            ">Float",
            "Leads on by",
            "Begins with"
        );
        foreach (var station in answer.Chain)
        {
            var row = station.Activity;
            table.Row(
                TextTable.Cut((row.Code + " " + row.Name).TrimEnd(), WidestName),
                row.IsMilestone ? "milestone" : Amounts.Count(row.Remaining),
                Amounts.Day(row.EarlyStart),
                Amounts.Day(row.EarlyFinish),
                row.TotalFloat is { } days ? Signed(days) : "",
                station.Leaves is { } link ? Link(link) : "",
                station.HeldBy == Holder.Link ? "" : HolderText(station.HeldBy)
            );
        }

        table.Write(context.Out);
    }

    private static void WriteActivities(CliContext context, IReadOnlyList<ActivityRow> rows)
    {
        var table = new TextTable(
            "Activity",
            ">Days",
            "Early start",
            "Early finish",
            "Late start",
            "Late finish",
            ">Total float",
            ">Free float",
            "",
            "Negative because of"
        );
        foreach (var row in rows)
        {
            table.Row(
                TextTable.Cut((row.Code + " " + row.Name).TrimEnd(), WidestName),
                row.IsMilestone ? "milestone" : Amounts.Count(row.Remaining),
                Amounts.Day(row.EarlyStart),
                Amounts.Day(row.EarlyFinish),
                Amounts.Day(row.LateStart),
                Amounts.Day(row.LateFinish),
                row.TotalFloat is { } total ? Signed(total) : "",
                row.FreeFloat is { } free ? Signed(free) : "",
                row.IsDriving ? "driving"
                    : row.IsCritical ? "critical"
                    : "",
                row.Cause is { } cause
                    ? $"{cause.Activity} {cause.Word} {Amounts.Day(cause.Date)}"
                    : ""
            );
        }

        table.Write(context.Out);
    }

    private static void WriteBroken(CliContext context, NetworkAnswer answer)
    {
        foreach (var link in answer.BrokenLinks.Take(MostLinks))
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Broken: {link.From} {Link(link)} {link.To} asks for {link.WorkDays} working days more than the date of {link.To} allows."
                )
            );
        }

        if (answer.BrokenLinks.Count > MostLinks)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"… and {answer.BrokenLinks.Count - MostLinks} more; --json has them all."
                )
            );
        }

        if (answer.OutOfSequence.Count > 0)
        {
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Progress has not kept to {Counted(answer.OutOfSequence.Count, "link", "links")}; --json has them all."
                )
            );
        }
    }

    private static string Link(LinkRow link) =>
        link.Lag == 0
            ? link.Type
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{link.Type} {(link.Lag > 0 ? "+" : "\u2212")}{Math.Abs(link.Lag)}"
            );

    private static string Counted(int count, string one, string many) =>
        count.ToString(CultureInfo.InvariantCulture) + " " + (count == 1 ? one : many);

    private static string Signed(int days) =>
        days < 0
            ? "\u2212" + Math.Abs(days).ToString(CultureInfo.InvariantCulture)
            : days.ToString(CultureInfo.InvariantCulture);

    private static string HolderWord(Holder holder) =>
        holder switch
        {
            Holder.Link => "link",
            Holder.Condition => "condition",
            Holder.Progress => "progress",
            Holder.StatusDate => "status_date",
            _ => "start",
        };

    private static string HolderText(Holder holder) =>
        holder switch
        {
            Holder.Condition => "a date condition",
            Holder.Progress => "work under way or done",
            Holder.StatusDate => "the status date",
            _ => "the project's start",
        };
}
