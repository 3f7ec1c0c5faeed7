using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Core.Network.Assessment;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum assess PROJECT</c></summary>
internal static class AssessCommand
{
    private const int ShownActivities = 4;

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "assess",
            "Whether the schedule can be relied on: the 14-point assessment."
        )
        {
            CommonOptions.Project,
            CommonOptions.Json,
        };
        return command.Answers<AssessAnswer>(
            context,
            _ => new AssessQuestion().Ask,
            WriteJson,
            WriteText
        );
    }

    private static void WriteJson(CliContext context, AssessAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.StatusDate);
                json.WriteNumber("revision", answer.Revision);
                json.WriteStartArray("metrics");
                foreach (var metric in answer.Metrics)
                {
                    json.WriteStartObject();
                    json.WriteNumber("number", metric.Number);
                    json.WriteString("name", metric.Name);
                    json.WriteNumber("count", metric.Count);
                    json.WriteNumber("of", metric.Of);
                    json.Ratio("value", metric.Value);
                    json.Ratio("threshold", metric.Threshold);
                    if (metric.Pass is { } pass)
                    {
                        json.WriteBoolean("pass", pass);
                    }
                    else
                    {
                        json.WriteNull("pass");
                    }

                    json.WriteStartArray("activities");
                    foreach (var code in answer.ActivitiesOf(metric))
                    {
                        json.WriteStringValue(code);
                    }

                    json.WriteEndArray();
                    json.WriteStartArray("links");
                    foreach (var link in answer.LinksOf(metric))
                    {
                        json.WriteStartObject();
                        json.WriteString("from", link.From);
                        json.WriteString("to", link.To);
                        json.WriteString("type", link.Type);
                        json.WriteNumber("lag", link.Lag);
                        json.WriteEndObject();
                    }

                    json.WriteEndArray();
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("practices");
                foreach (var measure in answer.Practices)
                {
                    json.WriteStartObject();
                    json.WriteNumber("practice", measure.Practice);
                    json.WriteString("name", measure.Name);
                    json.Ratio("value", measure.Value);
                    json.Number("of", measure.Of);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );

    private static void WriteText(CliContext context, AssessAnswer answer)
    {
        var failed = answer.Metrics.Count(metric => metric.Pass == false);
        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{failed} of {answer.Metrics.Count} points need a closer look. Status up to {Amounts.Day(answer.StatusDate)}."
            )
        );
        var table = new TextTable(
            ">",
            "Point",
            ">Count",
            ">Of",
            ">Value",
            "Limit",
            "",
            "For example"
        );
        foreach (var metric in answer.Metrics)
        {
            table.Row(
                Amounts.Count(metric.Number),
                Words(metric.Name),
                Amounts.Count(metric.Count),
                Amounts.Count(metric.Of),
                Value(metric),
                Limit(metric),
                metric.Pass switch
                {
                    true => "",
                    false => "look",
                    null => "–",
                },
                metric.Pass == false ? Examples(answer, metric) : ""
            );
        }

        table.Write(context.Out);
        context.Out.WriteLine(
            "A limit is a flag to look closer, not a limit of compliance. --json names every activity and link, and measures the ten best practices."
        );
        context.Out.WriteLine("Decision support, not a contractual or certified statement.");
    }

    private static bool IsIndex(AssessmentMetric metric) => metric.Number >= 12;

    private static string Value(AssessmentMetric metric) =>
        IsIndex(metric) ? Amounts.Index(metric.Value) : Amounts.Percent(metric.Value);

    private static string Limit(AssessmentMetric metric)
    {
        if (metric.Threshold is not { } limit)
        {
            return "none";
        }

        var text = IsIndex(metric) ? Amounts.Index(limit) : Amounts.Percent(limit);
        return (metric.AtLeast ? "at least " : "at most ") + text;
    }

    private static string Words(string name) => name.Replace('_', ' ');

    private static string Examples(AssessAnswer answer, AssessmentMetric metric)
    {
        var more =
            metric.Activities.Count > ShownActivities
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $" and {metric.Activities.Count - ShownActivities} more"
                )
                : "";
        return string.Join(", ", answer.ActivitiesOf(metric).Take(ShownActivities)) + more;
    }
}
