using Spectre.Console;

namespace Plenum.Cli.Output;

/// <summary>A table in the terminal: text left, figures right.</summary>
internal sealed class TextTable
{
    private const int WidestLine = 400;

    private readonly Table table = new() { Border = TableBorder.Simple, UseSafeBorder = true };

    /// <param name="columns">Headings; one that begins with &gt; stands right, over figures.</param>
    public TextTable(params ReadOnlySpan<string> columns)
    {
        foreach (var heading in columns)
        {
            var right = heading.StartsWith('>');
            var text = Markup.Escape(right ? heading[1..] : heading);
            table.AddColumn(
                new TableColumn(text)
                {
                    Alignment = right ? Justify.Right : Justify.Left,
                    NoWrap = true,
                }
            );
        }
    }

    public void Row(params ReadOnlySpan<string> cells)
    {
        var escaped = new string[cells.Length];
        for (var i = 0; i < escaped.Length; i++)
        {
            escaped[i] = Markup.Escape(cells[i]);
        }

        table.AddRow(escaped);
    }

    public void Write(TextWriter output)
    {
        var console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Ansi = AnsiSupport.No,
                ColorSystem = ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.No,
                Out = new AnsiConsoleOutput(output),
            }
        );
        console.Profile.Width = WidestLine;
        console.Write(table);
    }

    /// <summary>A name cut to a width, so that a line stays readable.</summary>
    public static string Cut(string text, int width) =>
        text.Length <= width ? text : text[..(width - 1)] + "…";
}
