using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Exchange.Import;

namespace Plenum.Workbench.Commands;

/// <summary>Collects what rules find wrong with the value that an edit would make.</summary>
internal sealed class EditFaults : IRowFaults
{
    private readonly List<EditFault> faults = [];

    /// <summary>The value that the rules look at.</summary>
    public Project? Project { get; set; }

    public bool Any => faults.Count > 0;

    public void Add(Table table, int row, ColumnDefinition? column, string expected, string message)
    {
        var text = Project is null ? null : new ProjectText(Project);
        var key = text is null
            ? null
            : string.Join(
                ", ",
                table
                    .Definition.Keys.Select(part => text.Of(table, row, part))
                    .Where(part => part is not null)
            );
        faults.Add(
            new EditFault(
                table.Definition.Name,
                key,
                column?.Name,
                column is null ? null : text?.Of(table, row, column),
                expected,
                ImportFaults.Whole(message, expected)
            )
        );
    }

    public void Add(EditFault fault) => faults.Add(fault);

    /// <summary>Takes over what is wrong with input that has no row any more.</summary>
    public void Add(InputErrors errors)
    {
        foreach (var error in errors.Items)
        {
            faults.Add(
                new EditFault(
                    error.File,
                    null,
                    error.Column,
                    error.Value,
                    error.Expected,
                    ImportFaults.Whole(error.Message, error.Expected)
                )
            );
        }
    }

    /// <exception cref="EditException">Anything was found.</exception>
    public void Throw()
    {
        if (Any)
        {
            throw new EditException([.. faults.Take(InputErrors.Kept)]);
        }
    }
}
