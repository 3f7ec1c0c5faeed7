using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Exchange.Books;
using Plenum.Workbench.Workbooks;

namespace Plenum.Workbench.Tests.Workbooks;

/// <summary>A workbook of the demo while a person edits it: rows of cells by heading.</summary>
internal sealed class EditedBook : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public EditedBook(Project project, string? under)
    {
        Project = project;
        WorkbookFile.Write(project, under, Path);
        var errors = new InputErrors();
        foreach (var sheet in BookReader.Read(Path, errors))
        {
            Sheets.Add(
                new EditedSheet
                {
                    Name = sheet.Name,
                    Headings = [.. sheet.Headings],
                    Rows =
                    [
                        .. sheet.Rows.Select(row => new Dictionary<string, string>(
                            row.Cells,
                            StringComparer.Ordinal
                        )),
                    ],
                }
            );
        }

        Assert.False(errors.Any);
    }

    public Project Project { get; }

    public List<EditedSheet> Sheets { get; } = [];

    /// <summary>What the workbook says as it was written.</summary>
    public WorkbookAnswer Untouched() => WorkbookReading.Read(Project, Path);

    public EditedSheet Outline => Sheets[0];

    public EditedSheet Dictionary => Sheets[1];

    public EditedSheet Matrix => Sheets[2];

    private string Path => folder["plant.xlsx"];

    /// <summary>Saves what was edited and compares it with the project.</summary>
    public WorkbookAnswer Read()
    {
        BookWriter.Write(Path, [.. Sheets.Select(sheet => sheet.Written())], []);
        return WorkbookReading.Read(Project, Path);
    }

    /// <summary>The project after everything was taken over.</summary>
    public Project Taken()
    {
        var answer = Read();
        Assert.Empty(answer.Errors.Items);
        Assert.NotNull(answer.Command);
        return Plenum.Workbench.Commands.EditTrial.Of(Project, answer.Command).Next;
    }

    public InputError OnlyError() => Assert.Single(Read().Errors.Items);

    public void Dispose() => folder.Dispose();
}

internal sealed class EditedSheet
{
    public required string Name { get; set; }

    public required List<string> Headings { get; init; }

    public required List<Dictionary<string, string>> Rows { get; init; }

    /// <summary>The row of an element, as a place in <see cref="Rows"/>.</summary>
    public int IndexOf(string code) => Rows.FindIndex(row => row["code"] == code);

    public Dictionary<string, string> this[string code] => Rows[IndexOf(code)];

    public BookSheet Written() =>
        new(
            Name,
            [.. Headings.Select(heading => new BookColumn(heading, BookColumnKind.Text, 10))],
            1,
            Rows.Select(row => new BookRow(
                1,
                false,
                [.. Headings.Select(heading => row.GetValueOrDefault(heading))],
                []
            ))
        );
}
