using System.CommandLine;
using System.Globalization;
using Plenum.Cli.Output;
using Plenum.Core.Foundation;
using Plenum.Store;
using Plenum.Workbench;
using Plenum.Workbench.Questions;

namespace Plenum.Cli;

/// <summary>Where a command writes, what time it is, and how what goes wrong is told.</summary>
/// <param name="ownFolder">Where the program keeps what it makes by itself; null for a temporary place.</param>
/// <param name="input">Standard input; the console's by default.</param>
public sealed class CliContext(
    TextWriter output,
    TextWriter error,
    TimeProvider clock,
    string? ownFolder = null,
    TextReader? input = null
)
{
    public string? OwnFolder => ownFolder;

    public TextWriter Out => output;

    /// <summary>Where commands are read from.</summary>
    public TextReader In { get; } = input ?? Console.In;

    public TextWriter Error => error;

    public TimeProvider Clock => clock;

    /// <summary>Runs a command's work and turns what can go wrong into a message and an exit status.</summary>
    public int Run(ParseResult parsed, Func<bool, int> work)
    {
        var json = parsed.GetValue(CommonOptions.Json);
        try
        {
            return work(json);
        }
        catch (Exception wrong) when (IsExpected(wrong))
        {
            return Tell(parsed.GetValue(CommonOptions.Project)?.Name ?? "project", json, wrong);
        }
    }

    /// <summary>The same for work that waits.</summary>
    /// <param name="what">What is said to be wrong where no file is named.</param>
    /// <param name="json">What goes wrong is told as a document too.</param>
    internal async Task<int> RunAsync(string what, bool json, Func<Task<int>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception wrong) when (IsExpected(wrong))
        {
            return Tell(what, json, wrong);
        }
    }

    private static bool IsExpected(Exception wrong) =>
        wrong
            is QuestionException
                or StoreException
                or IOException
                or UnauthorizedAccessException
                or OperationCanceledException;

    private int Tell(string project, bool json, Exception wrong)
    {
        switch (wrong)
        {
            case QuestionException:
                Error.WriteLine(wrong.Message);
                return ExitCode.WrongUsage;
            case StoreException refused:
                Refuse(json, project, refused.Message);
                return refused.Problem == StoreProblem.ReadOnly
                    ? ExitCode.NotAllowed
                    : ExitCode.BadInput;
            case OperationCanceledException:
                Error.WriteLine("Stopped; nothing has changed.");
                return ExitCode.BadInput;
            default:
                Refuse(json, "files", Words(wrong));
                return IsNotAllowed(wrong) ? ExitCode.NotAllowed : ExitCode.BadInput;
        }
    }

    /// <summary>Opens the project that the command names, with progress.</summary>
    internal OpenProject Open(ParseResult parsed, ProgressLine progress, CancellationToken ct) =>
        Open(parsed.GetRequiredValue(CommonOptions.Project), progress, ct);

    /// <summary>Opens a project, with progress.</summary>
    internal OpenProject Open(FileInfo project, ProgressLine progress, CancellationToken ct) =>
        OpenProject.Open(project.FullName, Clock, progress.As("opening"), ct);

    /// <summary>The system's words, and what to do where it is plain.</summary>
    private static string Words(Exception io)
    {
        const int UnixDiskFull = 28;
        const int WindowsDiskFull = unchecked((int)0x80070070);
        return io.HResult is UnixDiskFull or WindowsDiskFull
                ? io.Message.TrimEnd('.') + ". Make room, and run the command again."
            : IsNotAllowed(io) ? io.Message.TrimEnd('.') + ". Choose a place that you may write to."
            : io.Message;
    }

    private static bool IsNotAllowed(Exception io)
    {
        const int UnixReadOnly = 30;
        return io is UnauthorizedAccessException || io.HResult == UnixReadOnly;
    }

    private void Refuse(bool json, string file, string message)
    {
        if (json)
        {
            var errors = new InputErrors();
            errors.Add(file, "", message);
            InputErrorList.WriteJson(Out, errors);
        }

        Error.WriteLine(message);
    }

    /// <summary>A date as a command line has it.</summary>
    internal static DateOnly? ParseDate(string? text)
    {
        if (text is null)
        {
            return null;
        }

        return DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        )
            ? date
            : throw new QuestionException(
                $"\"{text}\" is not a date; a date such as 2026-03-31 is expected."
            );
    }
}
