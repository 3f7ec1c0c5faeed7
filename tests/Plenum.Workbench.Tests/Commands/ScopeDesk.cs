using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Scope;
using Plenum.Oracle.Tables;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Questions;
using Plenum.Workbench.Tests.Audit;

namespace Plenum.Workbench.Tests.Commands;

/// <summary>
/// The sound pumping plant, open for edits of its scope statement: S1 trains (whole), S2 hall (two phrases), S3 and S4.
/// </summary>
internal sealed class ScopeDesk : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public ScopeDesk(Action<TextProject>? change = null)
    {
        var text = SoundProject.Make();
        change?.Invoke(text);
        var file = Path.Combine(folder.Path, "plant.plenum");
        OpenProject.Create(file, "ann", TimeProvider.System);
        Open = OpenProject.Open(file, TimeProvider.System);
        var files = Path.Combine(folder.Path, "files");
        CsvFolder.Write(text, files);
        Assert.False(Open.Import(new ImportCommand([files], false, false, "ann")).Errors.Any);
    }

    public OpenProject Open { get; }

    public Project Project => Open.Current;

    public ScopeAnswer Statement => new ScopeQuestion().Ask(Project);

    public ScopeLine Line(string item) => Statement.Line(item)!;

    public int Item(string item) => IdOf(ScopeTable.Definition, item);

    public int Element(string code) => IdOf(ElementTable.Definition, code);

    public EditAnswer Do(EditCommand command) => Open.Edit(command, "ann");

    /// <summary>The command is refused with this sentence, and nothing has changed.</summary>
    public EditFault Refused(EditCommand command, string message)
    {
        var before = Project;
        var wrong = Assert.Throws<EditException>(() => Do(command));
        Assert.Same(before, Project);
        var fault = wrong.Faults[0];
        Assert.Equal(message, fault.Message);
        Assert.NotEqual("", fault.Expected);
        return fault;
    }

    public void Dispose()
    {
        Open.Dispose();
        folder.Dispose();
    }

    private int IdOf(TableDefinition table, string code) =>
        Project[table].Ids[Project[table].RowOfCode(code)];
}
