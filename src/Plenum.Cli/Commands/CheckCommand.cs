using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Core.Foundation;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum check PROJECT [--rule R]</c></summary>
internal static class CheckCommand
{
    private const int ShownOfARule = 20;

    private static readonly Option<string?> Rule = new("--rule")
    {
        Description = "Only this rule, all its findings.",
        HelpName = "R",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "check",
            "What the audit finds. Exit status 1 if there are errors."
        )
        {
            CommonOptions.Project,
            Rule,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Check(context, parsed, json, ct)))
        );
        return command;
    }

    private static int Check(
        CliContext context,
        ParseResult parsed,
        bool json,
        CancellationToken ct
    )
    {
        using var progress = new ProgressLine(context);
        using var project = context.Open(parsed, progress, ct);
        var answer = new CheckQuestion(parsed.GetValue(Rule)).Ask(project.Current);
        progress.Dispose();
        if (json)
        {
            WriteJson(context, answer);
        }
        else
        {
            WriteText(context, answer, parsed.GetValue(Rule) is null);
        }

        return answer.Count(Severity.Error) > 0 ? ExitCode.AnswerIsNo : ExitCode.Done;
    }

    private static void WriteJson(CliContext context, CheckAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteNumber("revision", answer.Revision);
                json.WriteStartArray("findings");
                foreach (var finding in answer.Findings)
                {
                    json.WriteStartObject();
                    json.WriteString("rule", finding.Rule);
                    json.WriteString("severity", Word(finding.Severity));
                    json.WriteString("code", finding.Code);
                    json.WriteString("message", finding.Message);
                    json.WriteString("remedy", finding.Remedy);
                    json.WriteBoolean("accepted", finding.IsAccepted);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartObject("counts");
                foreach (var severity in Enum.GetValues<Severity>())
                {
                    json.WriteNumber(Word(severity), answer.Count(severity));
                }

                json.WriteEndObject();
            }
        );

    private static void WriteText(CliContext context, CheckAnswer answer, bool shortened)
    {
        context.Out.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The audit finds {Counted(Severity.Error)}, {Counted(Severity.Warning)} and {Counted(Severity.Note)}."
            )
                + (
                    answer.Accepted > 0
                        ? string.Create(
                            CultureInfo.InvariantCulture,
                            $" {answer.Accepted} more {(answer.Accepted == 1 ? "is" : "are")} accepted with a reason."
                        )
                        : ""
                )
        );
        foreach (
            var group in answer
                .Findings.GroupBy(finding => finding.Rule, StringComparer.Ordinal)
                .OrderBy(group => group.First().Severity)
        )
        {
            var rule = answer.Rules[group.Key];
            var findings = group.ToList();
            context.Out.WriteLine();
            context.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{rule.Name} ({Word(rule.Severity)}, {findings.Count})"
                )
            );
            context.Out.WriteLine("  " + rule.Explanation);
            context.Out.WriteLine("  To do: " + rule.Remedy + " Source: " + rule.Source + ".");
            foreach (var finding in findings.Take(shortened ? ShownOfARule : int.MaxValue))
            {
                context.Out.WriteLine(
                    $"  {finding.Code}: {finding.Message}"
                        + (finding.IsAccepted ? $" Accepted: {finding.AcceptedBecause}" : "")
                );
            }

            if (shortened && findings.Count > ShownOfARule)
            {
                context.Out.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"  … and {findings.Count - ShownOfARule} more: --rule {rule.Name}"
                    )
                );
            }
        }

        string Counted(Severity severity)
        {
            var count = answer.Count(severity);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{count} {Word(severity)}{(count == 1 ? "" : "s")}"
            );
        }
    }

    private static string Word(Severity severity) =>
        severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        };
}
