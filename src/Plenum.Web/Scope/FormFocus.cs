using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Plenum.Core;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands;

namespace Plenum.Web.Scope;

/// <summary>What the forms of the sheet share.</summary>
internal static class FormFocus
{
    /// <summary>Puts the keys into a field, if it is still there.</summary>
    public static async Task To(ElementReference field)
    {
        try
        {
            await field.FocusAsync();
        }
        catch (Exception gone)
            when (gone is JSException or JSDisconnectedException or OperationCanceledException)
        {
            // the field has gone again, or the page
        }
    }

    /// <summary>The code of the first row that an edit added to a table; null for none.</summary>
    public static string? Added(EditAnswer answer, TableDefinition table, Project? project) =>
        answer.Added(table) is [var id, ..] && project?[table].RowOf(id) is var row and >= 0
            ? project[table].Codes[row.Value]
            : null;
}
