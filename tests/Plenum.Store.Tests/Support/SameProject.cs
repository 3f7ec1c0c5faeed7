using Plenum.Core;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Tests.Support;

internal static class SameProject
{
    /// <summary>Every table has the same rows in the same order, with the same ids and cells.</summary>
    public static void Assert(Project expected, Project actual)
    {
        Xunit.Assert.Equal(expected.Revision, actual.Revision);
        Xunit.Assert.Equal(expected.Tables.Count, actual.Tables.Count);
        foreach (var (table, other) in expected.Tables.Zip(actual.Tables))
        {
            Xunit.Assert.Same(table.Definition, other.Definition);
            Xunit.Assert.Equal(table.Ids, other.Ids);
            foreach (var column in table.Definition.Columns)
            {
                AssertColumn(column.ToString(), table[column], other[column], table.Count);
            }

            Xunit.Assert.Equal(
                table.OwnFields.Keys.Order(StringComparer.Ordinal),
                other.OwnFields.Keys.Order(StringComparer.Ordinal)
            );
            foreach (var (heading, field) in table.OwnFields)
            {
                AssertColumn(heading, field, other.OwnFields[heading], table.Count);
            }
        }
    }

    private static void AssertColumn(string name, Column expected, Column actual, int rows)
    {
        Xunit.Assert.Equal(rows, actual.Count);
        for (var row = 0; row < rows; row++)
        {
            Xunit.Assert.True(
                expected.SameAt(row, actual, row),
                $"{name}, row {row} came back otherwise"
            );
        }
    }
}
