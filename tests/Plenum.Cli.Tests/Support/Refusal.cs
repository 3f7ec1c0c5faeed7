using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Plenum.Cli.Tests.Support;

/// <summary>Imports that must be refused: with exit status 3, nothing changed, and an approved message.</summary>
internal static class Refusal
{
    private static readonly string[] ErrorNames =
    [
        "file",
        "row",
        "column",
        "value",
        "expected",
        "message",
    ];

    /// <summary>The pump house refuses these files, see <see cref="Terminal.Write(string)"/>.</summary>
    public static void Of(string files, string? option = null, [CallerMemberName] string name = "")
    {
        using var terminal = PumpHouse.Open();
        OfImport(terminal, terminal.Write(files), option, name);
    }

    /// <summary>The project in the terminal's folder refuses these files.</summary>
    public static void OfImport(
        Terminal terminal,
        IReadOnlyList<string> paths,
        string? option = null,
        [CallerMemberName] string name = ""
    )
    {
        string[] command =
        [
            "import",
            PumpHouse.File,
            .. paths,
            .. option is null ? Array.Empty<string>() : [option],
        ];
        var content = PumpHouse.ContentOf(terminal);
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var text = terminal.Tell(command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(ExitCode.BadInput, text.Status);
        Assert.Empty(text.Out);
        SaysTheSame(text, terminal.Run([.. command, "--json"]));
        IsUnchanged(terminal, content, bytes);
    }

    /// <summary>A command is refused: nothing on standard output, nothing changed, and an approved message.</summary>
    /// <param name="terminal">The terminal in whose folder the project lies.</param>
    /// <param name="command">The command.</param>
    /// <param name="status">The exit status; with that of bad input the same is told with --json.</param>
    /// <param name="ofFile">A file as a whole is refused: with --json it is told in words as well.</param>
    public static void OfCommand(
        Terminal terminal,
        string[] command,
        int status = ExitCode.BadInput,
        bool ofFile = false,
        [CallerMemberName] string name = ""
    )
    {
        var content = PumpHouse.ContentOf(terminal);
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var text = terminal.Tell(command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(status, text.Status);
        Assert.Empty(text.Out);
        Assert.NotEmpty(text.Error);
        if (ofFile)
        {
            var json = terminal.Run([.. command, "--json"]);
            Assert.Equal(status, json.Status);
            Assert.Equal(text.Error, json.Error);
            using var document = JsonDocument.Parse(json.Out);
            var error = Assert.Single(document.RootElement.GetProperty("errors").EnumerateArray());
            Assert.Equal(
                text.Error.TrimEnd('\n'),
                error
                    .GetProperty("message")
                    .GetString()!
                    .Replace(terminal.Folder, "<folder>", StringComparison.Ordinal)
            );
        }
        else if (status == ExitCode.BadInput)
        {
            SaysTheSame(text, terminal.Run([.. command, "--json"]));
        }

        IsUnchanged(terminal, content, bytes);
    }

    /// <summary>Lines of <c>plenum edit</c> are refused, each of them, and say why.</summary>
    public static void OfLines(Terminal terminal, string lines, [CallerMemberName] string name = "")
    {
        string[] command = ["edit", PumpHouse.File, "--as", "ann"];
        var content = PumpHouse.ContentOf(terminal);
        var bytes = File.ReadAllBytes(terminal[PumpHouse.File]);
        var text = terminal.TellWith(lines, command);
        Approved.Is(name, terminal.Story);
        Assert.Equal(ExitCode.BadInput, text.Status);
        Assert.Empty(text.Out);
        var json = terminal.RunWith(lines, [.. command, "--json"]);
        Assert.Equal(ExitCode.BadInput, json.Status);
        Assert.Equal(text.Error, json.Error);
        var number = 0;
        foreach (var line in json.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            using var document = JsonDocument.Parse(line);
            Assert.Equal(["line", "errors", "conflicts"], Json.NamesOf(document.RootElement));
            Assert.Equal(++number, document.RootElement.GetProperty("line").GetInt32());
            var told = document
                .RootElement.GetProperty("errors")
                .EnumerateArray()
                .Select(error => error.GetProperty("expected").GetString()!)
                .Concat(
                    document
                        .RootElement.GetProperty("conflicts")
                        .EnumerateArray()
                        .Select(both => both.GetProperty("column").GetString()!)
                )
                .ToList();
            Assert.NotEmpty(told);
            Assert.DoesNotContain("", told);
        }

        Assert.Equal(lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, number);
        IsUnchanged(terminal, content, bytes);
    }

    private static void IsUnchanged(Terminal terminal, string content, byte[] bytes)
    {
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
        Assert.True(
            bytes.AsSpan().SequenceEqual(File.ReadAllBytes(terminal[PumpHouse.File])),
            "the project's file has changed"
        );
    }

    /// <summary>The document has the names of the contract and the messages of the text, in the same order.</summary>
    private static void SaysTheSame(Reply text, Reply json)
    {
        Assert.Equal(ExitCode.BadInput, json.Status);
        Assert.Empty(json.Error);
        using var document = JsonDocument.Parse(json.Out);
        Assert.Equal(["errors", "error_count"], Json.NamesOf(document.RootElement));
        var errors = document.RootElement.GetProperty("errors");
        Assert.Equal(
            document.RootElement.GetProperty("error_count").GetInt32(),
            errors.GetArrayLength()
        );
        var lines = new StringReader(text.Error);
        foreach (var error in errors.EnumerateArray())
        {
            Assert.Equal(ErrorNames, Json.NamesOf(error));
            var message = error.GetProperty("message").GetString()!;
            Assert.NotEmpty(message);
            Assert.NotEmpty(error.GetProperty("expected").GetString()!);
            Assert.NotEmpty(error.GetProperty("file").GetString()!);
            var told = lines.ReadLine();
            foreach (var _ in message.Where(mark => mark == '\n'))
            {
                told += "\n" + lines.ReadLine();
            }

            Assert.EndsWith(message, told);
            Assert.StartsWith(error.GetProperty("file").GetString(), told);
        }
    }
}
