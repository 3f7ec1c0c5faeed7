using System.Globalization;

namespace Plenum.Exchange.Tests;

/// <summary>Looks at the memory of the whole process, so nothing else may run meanwhile.</summary>
[CollectionDefinition(nameof(MemoryOfSheets), DisableParallelization = true)]
[Collection(nameof(MemoryOfSheets))]
public sealed class MemoryOfSheets : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void What_is_held_does_not_grow_with_the_rows_read()
    {
        const int Rows = 60_000;
        var path = desk.PathOf("plant.xlsx");
        using (var writer = new XlsxTablesWriter(path))
        {
            writer.StartTable("actuals", ["document", "amount"]);
            for (var row = 0; row < Rows; row++)
            {
                writer.Text("D" + row.ToString(CultureInfo.InvariantCulture));
                writer.Number(row / 100m);
                writer.EndRow();
            }

            writer.Finish();
        }

        // what the runtime itself lays by, or has still to collect, comes once; what a reader holds would come every time
        var grown = Enumerable.Range(0, 3).Select(_ => GrownWhileReading(path, Rows)).Order();
        Assert.InRange(grown.ElementAt(1), long.MinValue, 1_000_000);
    }

    /// <summary>How many bytes more are held after the last row than after the first thousand.</summary>
    private long GrownWhileReading(string path, int rows)
    {
        using var reader = desk.Open(path);
        var early = 0L;
        while (reader.Read())
        {
            if (reader.Row == 1_000)
            {
                early = GC.GetTotalMemory(forceFullCollection: true);
            }
        }

        var late = GC.GetTotalMemory(forceFullCollection: true);
        Assert.Equal(rows + 1, reader.Row);
        return late - early;
    }
}
