using CsCheck;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Status;

namespace Plenum.Core.Tests.Foundation;

public class ReferencesTests
{
    /// <summary>The column of charges refers to several tables, so a number alone does not say which row is meant.</summary>
    [Fact]
    public void Rows_that_refer_to_some_rows_are_those_that_a_look_at_every_cell_finds() =>
        Gen.Select(
                Gen.Int[0, 2].SelectMany(target => Gen.Int[1, 60].Select(id => (target, id))).Array[
                    0,
                    300
                ],
                Gen.Int[1, 60].HashSet[0, 40],
                Gen.Int[0, 2]
            )
            .Sample(
                (cells, sought, target) =>
                {
                    var column = ActualTable.Charge;
                    target %= column.Targets.Count;
                    var stored = new NumberColumnBuilder<int>();
                    foreach (var (own, id) in cells)
                    {
                        stored.Add(column.EncodeReference(own % column.Targets.Count, id));
                    }

                    var columns = ActualTable.Definition.Columns.Select(other =>
                        other == column ? stored.Build() : Missing(other, cells.Length)
                    );
                    var table = new Table(
                        ActualTable.Definition,
                        [.. Enumerable.Range(1, cells.Length)],
                        [.. columns]
                    );

                    var expected = Enumerable
                        .Range(0, cells.Length)
                        .Where(row =>
                            column.DecodeReference(table.Ints(column)[row]) is var (found, id)
                            && found == target
                            && sought.Contains(id)
                        );
                    return expected.SequenceEqual(References.RowsTo(table, column, target, sought));
                }
            );

    private static Column Missing(ColumnDefinition column, int rows)
    {
        var builder = column.NewBuilder();
        for (var row = 0; row < rows; row++)
        {
            builder.AddMissing();
        }

        return builder.Build();
    }
}
