namespace Plenum.Core.Foundation.Tables;

/// <summary>Receives what is wrong with rows of tables; whoever brought the rows knows where they stand in files.</summary>
public interface IRowFaults
{
    /// <param name="table">The table.</param>
    /// <param name="row">Its row.</param>
    /// <param name="column">The column that is meant; null for the whole row.</param>
    /// <param name="expected">What would have been right, in plain words.</param>
    /// <param name="message">The complaint as a sentence.</param>
    void Add(Table table, int row, ColumnDefinition? column, string expected, string message);
}
