using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Parts;
using Plenum.Workbench.Tests.Files;

namespace Plenum.Workbench.Tests.Parts;

/// <summary>
/// An invented pump hall with two alike trains: pumps need six activities, tanks two. Pump 1 of train A is planned, its
/// sister in train B is not.
/// </summary>
internal sealed class PumpHall : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public PumpHall(string workSets = Usual, string more = "")
    {
        var path = folder["hall.plenum"];
        OpenProject.Create(path, "planner", TimeProvider.System);
        Open = OpenProject.Open(path, TimeProvider.System);
        var files = Directory.CreateDirectory(folder["files"]).FullName;
        Write("project", "key,value\ncode,H\nname,Pump hall\ncurrency,EUR\nstart,2026-01-05\n");
        Write("part_types", "part_type,name\npump,Pump\ntank,Tank\nbare,Type without work set\n");
        Write(
            "work_sets",
            "part_type,activity,facet,order,share,duration,technique,after,hazards\n" + workSets
        );
        Write(
            "elements",
            """
            code,parent,name,kind,split,part_type,activity,allotted,allotted_hours
            H,,Pump hall,,place,,,,
            H.1,H,Train A,branch,part,,,,
            H.1.1,H.1,Feed pump,branch,phase,pump,,1000.00,300
            H.1.1.1,H.1.1,"Feed pump, design",,,,Design,100.00,30
            H.1.1.2,H.1.1,"Feed pump, factory test",,,,Factory test,50.00,88
            H.1.2,H.1,Surge tank,branch,,tank,,,
            H.2,H,Train B,branch,part,,,,
            H.2.1,H.2,Feed pump,branch,,pump,,100.01,70.01
            H.2.2,H.2,Surge tank,branch,,tank,,,
            H.2.3,H.2,Frame,branch,,,,,
            H.2.4,H.2,Odd thing,branch,,bare,,,
            """
        );
        Write("not_needed", "element,activity,reason\nH.1.2,Erection,stands on the ground\n");
        if (more.Length > 0)
        {
            var cut = more.IndexOf('\n', StringComparison.Ordinal);
            Write(more[..cut], more[(cut + 1)..]);
        }

        var answer = Open.Import(new ImportCommand([files], false, false, "planner"));
        Assert.Equal([], answer.Errors.Items.Select(error => error.ToString()));

        void Write(string table, string text) =>
            File.WriteAllText(System.IO.Path.Combine(files, table + ".csv"), text);
    }

    public const string Usual = """
        pump,Design,engineering,1,10,20,0/100,,
        pump,Manufacture,procurement,2,50,60,milestones,Design,
        pump,Factory test,procurement,3,5,3,0/100,Manufacture,pressure
        pump,Erection,construction,4,20,15,percent,Factory test,lifting;work at height
        pump,Commissioning,commissioning,5,15,10,50/50,Erection,energising
        tank,Design,engineering,1,,10,,,
        tank,Erection,construction,2,,,,Design,lifting

        """;

    public OpenProject Open { get; }

    public Project Now => Open.Current;

    public int Id(string code) => Now.Tree.Elements.Ids[Now.Tree.Elements.RowOfCode(code)];

    public int Type(string code) =>
        Now[PartTypeTable.Definition].Ids[Now[PartTypeTable.Definition].RowOfCode(code)];

    public PartCell Cell(string code, string activity) => new(Id(code), activity);

    public EditAnswer Do(EditCommand command) => Open.Edit(command, "planner");

    /// <summary>The command is refused with this sentence, and the project is as it was.</summary>
    public void Refuses(EditCommand command, string message)
    {
        var before = Now;
        var wrong = Assert.Throws<EditException>(() => Do(command));
        Assert.Equal(message, string.Join("\n", wrong.Faults.Select(fault => fault.Message)));
        Assert.Same(before, Now);
    }

    /// <summary>What the matrix says of a part: a line for each activity of its set.</summary>
    public IReadOnlyList<string> Row(string code)
    {
        var matrix = Now.ActivityMatrix;
        var reasons = Now[NotNeededTable.Definition].Texts(NotNeededTable.Reason).ToArray();
        return
        [
            .. matrix
                .Cells(matrix.PartAt(Now.Tree.Elements.RowOfCode(code)))
                .Select(cell =>
                    matrix.Columns[cell.Column].Activity
                    + ": "
                    + cell.State switch
                    {
                        ActivityState.Planned => Hours(cell.Hours),
                        ActivityState.NotNeeded => reasons[cell.ReasonRow],
                        ActivityState.Both => "planned and ruled out",
                        _ => "missing",
                    }
                ),
        ];
    }

    public string? Text(string code, ColumnDefinition column) =>
        new ProjectText(Now).Of(Now.Tree.Elements, Now.Tree.Elements.RowOfCode(code), column);

    /// <summary>A table as lines of text.</summary>
    public IReadOnlyList<string> Lines(TableDefinition table, params ColumnDefinition[] columns)
    {
        var text = new ProjectText(Now);
        var rows = Now[table];
        return
        [
            .. Enumerable
                .Range(0, rows.Count)
                .Select(row =>
                    string.Join(" ", columns.Select(column => text.Of(rows, row, column) ?? "–"))
                ),
        ];
    }

    /// <summary>Every cell of every table.</summary>
    public IReadOnlyList<string> Content() => ProjectContent.Of(Now);

    public void Dispose()
    {
        Open.Dispose();
        folder.Dispose();
    }

    private static string Hours(long hundredths) =>
        (hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture) + " h";
}
