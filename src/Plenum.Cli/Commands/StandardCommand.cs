using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Standards;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum standard list | save PROJECT FILE | use PROJECT STANDARD</c></summary>
internal static class StandardCommand
{
    private static readonly Argument<FileInfo> File = new("FILE")
    {
        Description = "The new file of the standard breakdown; its name ends in .plenum.",
    };

    private static readonly Argument<string> Standard = new("STANDARD")
    {
        Description = "A name that plenum standard list gives, or a .plenum file.",
    };

    private static readonly Option<string?> Filled = new("--under")
    {
        Description = "The element that is filled with the parts; none for an empty project.",
        HelpName = "CODE",
    };

    private static readonly Option<LeaveOut[]> Leave = new("--leave")
    {
        Description = "A part of the standard breakdown that does not apply, with the reason.",
        HelpName = "CODE=REASON",
        CustomParser = ReadLeave,
    };

    private static readonly Option<bool> DryRun = new("--dry-run")
    {
        Description = "Say what would come, and change nothing.",
    };

    public static Command Build(CliContext context) =>
        new("standard", "Standard breakdowns: list them, save one, take one over.")
        {
            BuildList(context),
            BuildSave(context),
            BuildUse(context),
        };

    private static LeaveOut[] ReadLeave(ArgumentResult result)
    {
        List<LeaveOut> leave = [];
        foreach (var token in result.Tokens)
        {
            var mark = token.Value.IndexOf('=', StringComparison.Ordinal);
            if (mark < 1)
            {
                result.AddError(
                    $"--leave takes a code, an equals sign and a reason, such as \"4.2=no such unit here\"; \"{token.Value}\" found."
                );
                return [];
            }

            leave.Add(new LeaveOut(token.Value[..mark].Trim(), token.Value[(mark + 1)..].Trim()));
        }

        return [.. leave];
    }

    private static Command BuildList(CliContext context)
    {
        var command = new Command("list", "The standard breakdowns that come with the program.")
        {
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, _) =>
                Task.FromResult(
                    context.Run(
                        parsed,
                        json =>
                        {
                            var all = ShippedStandards.Keys.Select(ShippedStandards.Summary);
                            if (json)
                            {
                                WriteListJson(context, all);
                            }
                            else
                            {
                                WriteList(context, all);
                            }

                            return ExitCode.Done;
                        }
                    )
                )
        );
        return command;
    }

    private static void WriteList(CliContext context, IEnumerable<StandardSummary> all)
    {
        var table = new TextTable("Standard", "Name", ">Elements", ">Packages", ">Levels");
        foreach (var one in all)
        {
            table.Row(
                one.Key,
                one.Name,
                Amounts(one.Elements),
                Amounts(one.Packages),
                Amounts(one.Levels)
            );
        }

        table.Write(context.Out);
        foreach (var one in all)
        {
            context.Out.WriteLine($"{one.Key}: {one.About} Source: {one.Source}");
        }
    }

    private static void WriteListJson(CliContext context, IEnumerable<StandardSummary> all) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteStartArray("rows");
                foreach (var one in all)
                {
                    json.WriteStartObject();
                    json.WriteString("standard", one.Key);
                    json.WriteString("name", one.Name);
                    json.WriteNumber("elements", one.Elements);
                    json.WriteNumber("packages", one.Packages);
                    json.WriteNumber("levels", one.Levels);
                    json.WriteString("about", one.About);
                    json.WriteString("source", one.Source);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }
        );

    private static Command BuildSave(CliContext context)
    {
        var command = new Command(
            "save",
            "Save what can be used again of a project: no people, no money, no dates, no status."
        )
        {
            CommonOptions.Project,
            File,
            CommonOptions.Under,
            ImportCommand.As,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(
                    context.Run(
                        parsed,
                        json =>
                        {
                            using var progress = new ProgressLine(context);
                            using var project = context.Open(parsed, progress, ct);
                            var saved = StandardLibrary.Save(
                                project.Current,
                                parsed.GetValue(CommonOptions.Under),
                                parsed.GetRequiredValue(File).FullName,
                                ImportCommand.PersonOf(parsed),
                                context.Clock
                            );
                            progress.Dispose();
                            TellSaved(context, json, saved, parsed.GetRequiredValue(File).Name);
                            return ExitCode.Done;
                        }
                    )
                )
        );
        return command;
    }

    private static void TellSaved(CliContext context, bool json, Project saved, string file)
    {
        if (!json)
        {
            context.Out.WriteLine(
                $"{Amounts(saved.Tree.Count)} {(saved.Tree.Count == 1 ? "element" : "elements")} saved in {file}, without people, money, dates and status."
            );
            return;
        }

        JsonAnswer.Write(
            context.Out,
            answer =>
            {
                answer.WriteString("file", file);
                answer.WriteNumber("elements", saved.Tree.Count);
                answer.WriteNumber("packages", saved.Tree.PackageCount);
            }
        );
    }

    private static Command BuildUse(CliContext context)
    {
        var command = new Command(
            "use",
            "Start an empty project with a standard breakdown, or fill an element with its parts."
        )
        {
            CommonOptions.Project,
            Standard,
            Filled,
            Leave,
            DryRun,
            ImportCommand.As,
            CommonOptions.Json,
        };
        command.SetAction(
            (parsed, ct) =>
                Task.FromResult(context.Run(parsed, json => Use(context, parsed, json, ct)))
        );
        return command;
    }

    private static int Use(CliContext context, ParseResult parsed, bool json, CancellationToken ct)
    {
        var standard = StandardLibrary.Find(parsed.GetRequiredValue(Standard), context.Clock);
        using var progress = new ProgressLine(context);
        using var project = context.Open(parsed, progress, ct);
        progress.Dispose();
        var elements = project.Current[ElementTable.Definition];
        var under = ListQuestion.PositionOf(project.Current, parsed.GetValue(Filled));
        var command = new UseStandardCommand(
            under < 0 ? 0 : elements.Ids[under],
            standard,
            parsed.GetValue(Leave) ?? []
        );
        return EditAction.Do(
            context,
            project,
            command,
            ImportCommand.PersonOf(parsed),
            parsed.GetValue(DryRun),
            json,
            fault =>
                fault.Table.Length > 0
                    ? fault
                    : fault with
                    {
                        Table = parsed.GetRequiredValue(CommonOptions.Project).Name,
                    }
        );
    }

    private static string Amounts(int count) => count.ToString(CultureInfo.InvariantCulture);
}
