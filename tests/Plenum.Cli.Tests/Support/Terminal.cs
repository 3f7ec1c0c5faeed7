using System.Text;

namespace Plenum.Cli.Tests.Support;

/// <summary>What a command wrote, and its exit status.</summary>
internal sealed record Reply(int Status, string Out, string Error);

/// <summary>
/// A terminal in a folder of its own, which is gone afterwards: commands run as a user runs them, with the folder as
/// the current one. All that was written and run is kept as text, with the folder's own name taken out.
/// </summary>
internal sealed class Terminal : IDisposable
{
    private readonly string before = Directory.GetCurrentDirectory();
    private readonly StringBuilder story = new();

    public Terminal()
    {
        Folder = Directory.CreateTempSubdirectory("plenum-").FullName;
        Directory.SetCurrentDirectory(Folder);
        // as the system calls it, links resolved
        Folder = Directory.GetCurrentDirectory();
    }

    public string Folder { get; }

    /// <summary>What was told so far.</summary>
    public string Story => story.ToString();

    public string this[string name] => Path.Combine(Folder, name);

    /// <summary>Runs a command and tells it.</summary>
    public Reply Tell(params string[] args) => TellWith("", args);

    /// <summary>The same with something on its standard input, which is told too, each line behind a mark.</summary>
    public Reply TellWith(string input, params string[] args)
    {
        var reply = Run(null, input, args);
        foreach (var line in input.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            story.Append("< ").Append(line.TrimEnd('\r')).Append('\n');
        }

        story.Append("$ plenum");
        foreach (var arg in args)
        {
            story
                .Append(' ')
                .Append(arg.Contains(' ', StringComparison.Ordinal) ? $"\"{arg}\"" : arg);
        }

        story
            .Append('\n')
            .Append(reply.Out)
            .Append(reply.Error)
            .Append("exit status ")
            .Append(reply.Status)
            .Append("\n\n");
        return reply;
    }

    /// <summary>Runs a command and tells nothing of it.</summary>
    public Reply Run(params string[] args) => RunAt(null, args);

    /// <summary>The same with a folder where the program keeps what it makes by itself.</summary>
    public Reply RunAt(string? ownFolder, params string[] args) => Run(ownFolder, "", args);

    /// <summary>Runs a command with something on its standard input.</summary>
    public Reply RunWith(string input, params string[] args) => Run(null, input, args);

    private Reply Run(string? ownFolder, string input, string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var status = Program
            .RunAsync(
                args,
                new CliContext(
                    output,
                    error,
                    new StoppedClock(),
                    ownFolder,
                    new StringReader(input)
                ),
                TestContext.Current.CancellationToken
            )
            .GetAwaiter()
            .GetResult();
        return new Reply(status, Told(output), Told(error));
    }

    /// <summary>Runs a command that must be done.</summary>
    public Reply Do(params string[] args)
    {
        var reply = Run(args);
        Assert.True(reply.Status == ExitCode.Done, reply.Out + reply.Error);
        return reply;
    }

    /// <summary>Adds a remark to the story.</summary>
    public void Say(string text) => story.Append(text).Append('\n');

    /// <summary>
    /// Writes and tells files: each begins with a line that has its name in brackets. Returns their names.
    /// </summary>
    public string[] Write(string files)
    {
        List<string> names = [];
        foreach (var file in files.Split("\n[").Select(text => text.TrimStart('[', '\n')))
        {
            var end = file.IndexOf("]\n", StringComparison.Ordinal);
            var name = end < 0 ? file.TrimEnd(']') : file[..end];
            var text = end < 0 ? "" : file[(end + 2)..];
            text = text.Length == 0 || text.EndsWith('\n') ? text : text + "\n";
            if (Path.GetDirectoryName(name) is { Length: > 0 } folder)
            {
                Directory.CreateDirectory(this[folder]);
            }

            File.WriteAllText(this[name], text);
            names.Add(name);
            story.Append(name).Append('\n');
            foreach (var line in text.TrimEnd('\n').Split('\n'))
            {
                story.Append("  ").Append(line).Append('\n');
            }
        }

        story.Append('\n');
        return [.. names];
    }

    /// <summary>Writes a file that is not text, or too long to tell, and says what it is.</summary>
    public string Write(string name, byte[] content, string what)
    {
        File.WriteAllBytes(this[name], content);
        Say($"{name}: {what}\n");
        return name;
    }

    public void Dispose()
    {
        Directory.SetCurrentDirectory(before);
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>Without the folder's name, and with the command's instead of the running program's in its help.</summary>
    private string Told(StringWriter writer) =>
        writer
            .ToString()
            .Replace(Folder, "<folder>", StringComparison.Ordinal)
            .Replace("  Plenum.Cli.Tests ", "  plenum ", StringComparison.Ordinal);

    /// <summary>Stands still at the end of the example's third period, in UTC.</summary>
    private sealed class StoppedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 4, 2, 9, 0, 0, TimeSpan.Zero);
    }
}
