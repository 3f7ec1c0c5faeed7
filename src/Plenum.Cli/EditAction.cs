using Plenum.Cli.Output;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench;
using Plenum.Workbench.Commands;

namespace Plenum.Cli;

/// <summary>Does an edit from the command line, or says what it would do, and tells what changed or what is wrong.</summary>
internal static class EditAction
{
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static int Do(
        CliContext context,
        OpenProject project,
        EditCommand command,
        string person,
        bool dryRun,
        bool json
    )
    {
        try
        {
            var (changes, revision) = dryRun
                ? (EditTrial.Of(project.Current, command).Changes, project.Current.Revision)
                : Edit(project, command, person);
            if (json)
            {
                WriteJson(context, changes, revision, dryRun);
            }
            else
            {
                WriteText(context, changes, revision, dryRun);
            }

            return ExitCode.Done;
        }
        catch (EditConflictException both)
        {
            context.Error.WriteLine(both.Message);
            return ExitCode.BadInput;
        }
        catch (EditException wrong)
        {
            var errors = Errors(wrong);
            if (json)
            {
                InputErrorList.WriteJson(context.Out, errors);
            }
            else
            {
                InputErrorList.WriteText(context.Error, errors);
            }

            return ExitCode.BadInput;
        }
    }

    private static (IReadOnlyList<TableChange>, long) Edit(
        OpenProject project,
        EditCommand command,
        string person
    )
    {
        var answer = project.Edit(command, person);
        return (answer.Changes, answer.Revision);
    }

    /// <summary>What is wrong with an edit, as it is told of files.</summary>
    public static InputErrors Errors(EditException wrong)
    {
        var errors = new InputErrors();
        foreach (var fault in wrong.Faults)
        {
            errors.Add(
                fault.Table.Length > 0 ? fault.Table : "command",
                null,
                fault.Column,
                fault.Value,
                fault.Expected,
                fault.Message
            );
        }

        return errors;
    }

    private static void WriteJson(
        CliContext context,
        IReadOnlyList<TableChange> changes,
        long revision,
        bool dryRun
    ) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.WriteStartObject("changed");
                foreach (var change in changes)
                {
                    json.WriteNumber(change.Definition.Name, change.Count);
                }

                json.WriteEndObject();
                json.WriteNumber("revision", revision);
                if (dryRun)
                {
                    json.WriteBoolean("dry_run", true);
                }
            }
        );

    private static void WriteText(
        CliContext context,
        IReadOnlyList<TableChange> changes,
        long revision,
        bool dryRun
    )
    {
        if (changes.Count == 0)
        {
            context.Out.WriteLine("Nothing changes: the project has all of this already.");
            return;
        }

        var table = new TextTable("Table", ">Added", ">Updated", ">Removed");
        foreach (var change in changes)
        {
            table.Row(
                change.Definition.Name,
                Amounts.Count(change.Added.Count),
                Amounts.Count(change.Updated.Count),
                Amounts.Count(change.Removed.Count)
            );
        }

        table.Write(context.Out);
        context.Out.WriteLine(
            dryRun
                ? "Nothing was changed (--dry-run)."
                : string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"Done. Revision {revision}."
                )
        );
    }
}
