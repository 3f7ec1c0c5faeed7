namespace Plenum.Samples.Foundation;

/// <summary>
/// The tables of one project on their way into a folder. Either all of them get their names or, after an exception,
/// none of them; other files in the folder are left alone.
/// </summary>
internal sealed class TableFolder : IDisposable
{
    private readonly string _folder;
    private readonly List<TableWriter> _tables = [];

    public TableFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        Directory.CreateDirectory(folder);
        _folder = folder;
    }

    public TableWriter Open(string table, params ReadOnlySpan<string> columns)
    {
        var writer = new TableWriter(_folder, table, columns);
        _tables.Add(writer);
        return writer;
    }

    public void Complete()
    {
        foreach (var table in _tables)
        {
            table.Complete();
        }
    }

    public void Dispose()
    {
        foreach (var table in _tables)
        {
            table.Dispose();
        }
    }
}
