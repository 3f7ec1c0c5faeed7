using System.Text;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Tests;

/// <summary>A folder of its own for a test, and the errors of what is read from it.</summary>
public sealed class Desk : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("plenum-").FullName;

    public InputErrors Errors { get; } = new();

    public InputError OnlyError => Assert.Single(Errors.Items);

    public string PathOf(string name) => Path.Combine(Folder, name);

    public string Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    public string Put(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    public TableSource Source(string path) => Assert.Single(TableSource.Find([path], Errors));

    public RowReader Open(string path)
    {
        var reader = Source(path).Open(Errors);
        Assert.NotNull(reader);
        return reader;
    }

    public RowReader OpenCsv(string text) => Open(Put("table.csv", text));

    /// <summary>The rows of a CSV file with this text, cells joined by |, each with its row number.</summary>
    public IReadOnlyList<string> RowsOfCsv(string text)
    {
        using var reader = OpenCsv(text);
        return Rows(reader);
    }

    /// <summary>The error that keeps a CSV file with this text from being opened.</summary>
    public InputError RefusedCsv(byte[] bytes)
    {
        Assert.Null(Source(Put("table.csv", bytes)).Open(Errors));
        return OnlyError;
    }

    public static IReadOnlyList<string> Rows(RowReader reader)
    {
        var rows = new List<string>();
        while (reader.Read())
        {
            rows.Add($"{reader.Row}: {string.Join('|', Cells(reader))}");
        }

        return rows;
    }

    public static IReadOnlyList<string> Cells(RowReader reader)
    {
        var cells = new string[reader.CellCount];
        for (var column = 0; column < cells.Length; column++)
        {
            cells[column] = reader[column].ToString();
        }

        return cells;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
