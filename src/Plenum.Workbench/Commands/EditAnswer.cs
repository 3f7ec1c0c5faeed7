using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands;

/// <summary>What an edit has done.</summary>
/// <param name="Words">In words.</param>
/// <param name="Revision">Revision of the project afterwards.</param>
/// <param name="Changes">The rows that have changed, by table; none if everything was so already.</param>
public sealed record EditAnswer(string Words, long Revision, IReadOnlyList<TableChange> Changes)
{
    /// <summary>The rows of a table that were added, in order.</summary>
    public IReadOnlyList<int> Added(TableDefinition table) =>
        Changes.FirstOrDefault(change => change.Definition == table)?.Added ?? [];
}

/// <summary>An edit as it is told to others.</summary>
public sealed record EditNote(string Person, DateTimeOffset At, string Words, long Revision);
