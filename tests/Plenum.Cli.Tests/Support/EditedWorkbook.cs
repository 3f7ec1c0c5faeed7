using Plenum.Core.Foundation;
using Plenum.Exchange.Books;

namespace Plenum.Cli.Tests.Support;

/// <summary>
/// The workbook of a project while a person edits it: rows of cells by heading, sheet by sheet. What is done to it is
/// told in the terminal's story.
/// </summary>
internal sealed class EditedWorkbook
{
    public const string File = "pumps.xlsx";

    private readonly Terminal terminal;

    /// <summary>Writes it with <c>plenum workbook</c>.</summary>
    public EditedWorkbook(Terminal terminal, params string[] options)
    {
        this.terminal = terminal;
        terminal.Do(["workbook", PumpHouse.File, File, .. options]);
        var errors = new InputErrors();
        foreach (var sheet in BookReader.Read(terminal[File], errors))
        {
            Sheets.Add(
                new Sheet(
                    sheet.Name,
                    [.. sheet.Headings],
                    [
                        .. sheet.Rows.Select(row => new Dictionary<string, string>(
                            row.Cells,
                            StringComparer.Ordinal
                        )),
                    ]
                )
            );
        }

        Assert.False(errors.Any);
    }

    public List<Sheet> Sheets { get; } = [];

    public Sheet Outline => Sheets[0];

    public Sheet Dictionary => Sheets[1];

    public Sheet Matrix => Sheets[2];

    /// <summary>Edits it, saves it, and tells what was done.</summary>
    public void Edit(string what, Action<EditedWorkbook> edit)
    {
        edit(this);
        BookWriter.Write(terminal[File], [.. Sheets.Select(sheet => sheet.Written())], []);
        terminal.Say($"{File}: {what}\n");
    }

    internal sealed class Sheet(
        string name,
        List<string> headings,
        List<Dictionary<string, string>> rows
    )
    {
        public string Name { get; set; } = name;

        public List<string> Headings => headings;

        public List<Dictionary<string, string>> Rows => rows;

        /// <summary>The row of an element.</summary>
        public Dictionary<string, string> this[string code] =>
            rows.Single(row => row.GetValueOrDefault("code") == code);

        public BookSheet Written() =>
            new(
                Name,
                [.. headings.Select(heading => new BookColumn(heading, BookColumnKind.Text, 10))],
                1,
                rows.Select(row => new BookRow(
                    1,
                    false,
                    [.. headings.Select(heading => row.GetValueOrDefault(heading))],
                    []
                ))
            );
    }
}
