using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;

namespace Plenum.Web.Scope;

/// <summary>What an edit of the statement has added.</summary>
internal static class AddedRows
{
    /// <summary>The code of the first row that an edit added to a table; null for none.</summary>
    public static string? FirstCode(EditAnswer answer, TableDefinition table, Project? project) =>
        answer.Added(table) is [var id, ..] && project?[table].RowOf(id) is var row and >= 0
            ? project[table].Codes[row.Value]
            : null;
}
