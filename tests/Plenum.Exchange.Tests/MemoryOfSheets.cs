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
        Assert.Equal(Rows + 1, reader.Row);
        Assert.InRange(late - early, long.MinValue, 1_000_000);
    }
}
