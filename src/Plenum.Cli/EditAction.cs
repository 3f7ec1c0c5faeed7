using Plenum.Cli.Output;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench;
using Plenum.Workbench.Commands;

namespace Plenum.Cli;

/// <summary>Does an edit from the command line, or says what it would do, and tells what changed or what is wrong.</summary>
internal static class EditAction
{
    /// <param name="place">Says where in an input that the edit came from something wrong stands.</param>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static int Do(
        CliContext context,
        OpenProject project,
        EditCommand command,
        string person,
        bool dryRun,
        bool json,
        Func<EditFault, EditFault>? place = null
    )
    {
        if (TryDo(context, project, command, person, dryRun, json, place) is not { } done)
        {
            return ExitCode.BadInput;
        }

        if (json)
        {
            WriteJson(context, done.Changes, done.Revision, dryRun);
        }
        else
        {
            WriteText(context, done.Changes, done.Revision, dryRun);
        }

        return ExitCode.Done;
    }

    /// <summary>Does it, or tries it only; tells nothing unless it was refused.</summary>
    /// <param name="place">Says where in an input that the edit came from something wrong stands.</param>
    /// <returns>What changed, and the revision of the project; null after a refusal.</returns>
    public static (IReadOnlyList<TableChange> Changes, long Revision)? TryDo(
        CliContext context,
        OpenProject project,
        EditCommand command,
        string person,
        bool dryRun,
        bool json,
        Func<EditFault, EditFault>? place = null
    )
    {
        try
        {
            if (dryRun)
            {
                return (EditTrial.Of(project.Current, command).Changes, project.Current.Revision);
            }

            var answer = project.Edit(command, person);
            return (answer.Changes, answer.Revision);
        }
        catch (Exception refused) when (EditRefusal.Is(refused))
        {
            var errors = EditRefusal.Of(refused, place);
            if (json)
            {
                InputErrorList.WriteJson(context.Out, errors);
            }
            else
            {
                InputErrorList.WriteText(context.Error, errors);
            }

            return null;
        }
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

    public static void WriteText(
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
