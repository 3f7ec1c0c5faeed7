using Plenum.Core.Foundation.Tables;

namespace Plenum.Bench.Data;

/// <summary>Tables of a project in memory, from a few columns; all others are not given.</summary>
internal static class Tables
{
    /// <param name="definition">The table.</param>
    /// <param name="count">Rows; their ids are 1, 2, 3 and so on.</param>
    /// <param name="given">The columns that have values, each <paramref name="count"/> long.</param>
    public static Table Of(
        TableDefinition definition,
        int count,
        params ReadOnlySpan<(ColumnDefinition Definition, Column Values)> given
    )
    {
        var columns = new Column[definition.Columns.Count];
        foreach (var (column, values) in given)
        {
            columns[column.Index] = values;
        }

        for (var index = 0; index < columns.Length; index++)
        {
            columns[index] ??= Missing(definition.Columns[index], count);
        }

        return new Table(definition, [.. Enumerable.Range(1, count)], columns);
    }

    public static Column Of(int[] values) => new NumberColumn<int>(values);

    public static Column Of(long[] values) => new NumberColumn<long>(values);

    public static Column Of(string?[] values) => new TextColumn(values);

    private static Column Missing(ColumnDefinition column, int count)
    {
        var builder = column.NewBuilder();
        for (var row = 0; row < count; row++)
        {
            builder.AddMissing();
        }

        return builder.Build();
    }
}
