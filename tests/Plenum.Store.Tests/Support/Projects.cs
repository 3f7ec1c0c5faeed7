using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Tests.Support;

/// <summary>Files and changes of them, short to write down.</summary>
internal static class Projects
{
    public static readonly AuditEntry Entry = new("planner", "import", "first issue", null);

    public static ProjectFile New(string path) =>
        ProjectFile.Create(path, Entry, TimeProvider.System);

    /// <summary>A new file with all rows of a project; the project has revision 1.</summary>
    public static ProjectFile With(string path, Project project)
    {
        var file = New(path);
        file.Commit(Project.Empty, project, GeneratedProject.AllAdded(project), Entry);
        return file;
    }

    /// <summary>Commits the changes with an ordinary entry.</summary>
    public static void Commit(
        ProjectFile file,
        Project before,
        Project after,
        params TableChange[] changes
    ) =>
        file.Commit(
            before,
            after,
            changes,
            Entry,
            cancellationToken: TestContext.Current.CancellationToken
        );

    public static Project Loaded(this ProjectFile file) =>
        file.Load(cancellationToken: TestContext.Current.CancellationToken);

    /// <summary>The project with one cell of text changed in the row with an id.</summary>
    public static (Project After, TableChange Change) WithText(
        Project before,
        ColumnDefinition column,
        int id,
        string? text
    )
    {
        var table = before[column.Table];
        var builder = (TextColumnBuilder)table[column].ToBuilder(0);
        builder[table.RowOf(id)] = text;
        return (
            before.With([table.With(column, builder.Build())]),
            new TableChange(column.Table, [], [id], [])
        );
    }

    /// <summary>Commits one changed cell of text.</summary>
    public static Project SetText(
        this ProjectFile file,
        Project before,
        ColumnDefinition column,
        int id,
        string? text
    )
    {
        var (after, change) = WithText(before, column, id, text);
        file.Commit(before, after, [change], Entry);
        return after;
    }
}
