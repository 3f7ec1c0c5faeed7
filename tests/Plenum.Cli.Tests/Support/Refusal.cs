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
