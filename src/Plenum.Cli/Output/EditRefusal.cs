using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Exchange.Import;
using Plenum.Workbench.Commands;

namespace Plenum.Cli.Output;

/// <summary>Tells why an edit was refused, in the way in which it is told of files.</summary>
internal static class EditRefusal
{
    /// <summary>What was wrong with the command itself, not with a row of a table, has this in place of a file.</summary>
    public const string Command = "command";

    /// <summary>An edit that cannot be done, or that meets somebody else's.</summary>
    public static bool Is(Exception wrong) => wrong is EditException or EditConflictException;

    /// <param name="refused">Such an exception.</param>
    /// <param name="place">Says where in an input something stands; by default it is taken as it is.</param>
    public static InputErrors Of(Exception refused, Func<EditFault, EditFault>? place = null)
    {
        var errors = new InputErrors();
        foreach (var fault in FaultsOf(refused))
        {
            var placed = place?.Invoke(fault) ?? fault;
            Add(
                errors,
                placed,
                placed.Line is null ? Place(placed.Table, placed.Row) : placed.Table
            );
        }

        foreach (var conflict in ConflictsOf(refused))
        {
            errors.Add(
                Place(conflict.Table, conflict.Row),
                null,
                conflict.Column,
                conflict.Mine,
                $"what stands there as what was seen: {Quote(conflict.Theirs)}",
                $"{conflict.Person ?? "somebody else"} has changed this to {Quote(conflict.Theirs)} since it was seen; "
                    + $"{Quote(conflict.Mine)} was to be written. Look at both, and give what stands there as what was seen"
            );
        }

        return errors;
    }

    /// <summary>The same of a command that carries what it writes with it: a place in that is called a line.</summary>
    public static IEnumerable<string> InWords(Exception refused)
    {
        var errors = Of(
            refused,
            fault =>
                fault.Line is { } line
                    ? fault with
                    {
                        Table = string.Create(
                            CultureInfo.InvariantCulture,
                            $"{fault.Table}, line {line}"
                        ),
                        Row = null,
                        Line = null,
                        Message = Without(fault.Message, $"{fault.Row}: ", true),
                    }
                    : fault
        );
        return errors.Items.Select(error =>
            error.File == Command && error.Column is null ? error.Message : error.ToString()
        );
    }

    public static IReadOnlyList<EditFault> FaultsOf(Exception refused) =>
        refused is EditException { Faults: var faults } ? faults : [];

    public static IReadOnlyList<EditConflict> ConflictsOf(Exception refused) =>
        refused is EditConflictException { Conflicts: var conflicts } ? conflicts : [];

    private static void Add(InputErrors errors, EditFault fault, string file)
    {
        var message = Without(fault.Message, $"{fault.Row}: ", fault.Line is not null);
        message = Without(message, $"{fault.Column}: ", fault.Column is not null);
        errors.Add(
            file,
            fault.Line,
            fault.Column,
            fault.Value,
            fault.Expected,
            ImportFaults.Whole(message.TrimEnd('.'), fault.Expected)
        );
    }

    /// <summary>A message that stands alone begins with its place, which is told already.</summary>
    private static string Without(string message, string place, bool isTold) =>
        isTold && message.StartsWith(place, StringComparison.Ordinal)
            ? message[place.Length..]
            : message;

    private static string Place(string table, string? key) =>
        table.Length == 0 ? Command
        : string.IsNullOrEmpty(key) ? table
        : string.Create(CultureInfo.InvariantCulture, $"{table}, row {key}");

    private static string Quote(string? value) => value is null ? "nothing" : $"\"{value}\"";
}
