using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench;
using Plenum.Workbench.Words;

namespace Plenum.Web.Projects;

/// <summary>What an import would do to one table: numbers of rows.</summary>
/// <param name="Table">The table's name.</param>
/// <param name="Added">Rows with a key that the table does not have.</param>
/// <param name="Updated">Rows that have another content afterwards.</param>
/// <param name="Removed">Rows that are not in the files, under replacement.</param>
/// <param name="RemovedKeys">The keys of the first rows that would be removed.</param>
public sealed record TablePreview(
    string Table,
    int Added,
    int Updated,
    int Removed,
    IReadOnlyList<string> RemovedKeys
);

/// <summary>What an import would do, or all that is wrong with it. Nothing has changed.</summary>
/// <param name="Revision">The revision of the project for which this holds.</param>
/// <param name="FilesVersion">The state of the files for which this holds.</param>
/// <param name="Replace">The tables would be made equal to the files.</param>
/// <param name="Tables">The tables that would change, in the order in which they refer to each other.</param>
/// <param name="Errors">The first errors; if there are any, the import would be refused as a whole.</param>
/// <param name="ErrorCount">How many errors there are, listed or not.</param>
public sealed record ImportPreview(
    long Revision,
    int FilesVersion,
    bool Replace,
    IReadOnlyList<TablePreview> Tables,
    IReadOnlyList<InputError> Errors,
    long ErrorCount
)
{
    /// <summary>How many keys of rows that would be removed are named for each table.</summary>
    public const int KeysNamed = 8;

    public int Added => Tables.Sum(table => table.Added);

    public int Updated => Tables.Sum(table => table.Updated);

    public int Removed => Tables.Sum(table => table.Removed);

    /// <summary>There is something to take over.</summary>
    public bool CanBeTaken => ErrorCount == 0 && Tables.Count > 0;

    /// <summary>The whole of it as one sentence.</summary>
    public string Sentence =>
        ErrorCount > 0 ? SentenceOfErrors()
        : Tables.Count == 0 ? "Nothing would change: the project has all of this already."
        : Added + Updated == 0
            ? $"{Counted(Removed, "row")} would be removed from {Counted(Tables.Count, "table")}; nothing is added."
        : $"{Counted(Tables.Count, "table")} would {string.Join(" and ", Deeds())}; "
            + (
                Removed == 0
                    ? "nothing is removed."
                    : $"{Counted(Removed, "row")} would be removed."
            );

    /// <summary>What the button does.</summary>
    public string Deed =>
        Added + Updated == 0 ? $"Remove {Counted(Removed, "row")}"
        : Removed == 0 ? $"Take {Counted(Added + Updated, "row")}"
        : $"Take {Counted(Added + Updated, "row")}, remove {Amounts.Count(Removed)}";

    /// <summary>A number with its noun.</summary>
    public static string Counted(long count, string noun) =>
        $"{Amounts.Count(count)} {(count == 1 ? noun : noun + "s")}";

    /// <param name="asBrought">Says a text about the files as the person knows them.</param>
    internal static ImportPreview Of(
        ImportAnswer answer,
        Project before,
        int filesVersion,
        bool replace,
        Func<string, string> asBrought
    ) =>
        new(
            answer.Revision,
            filesVersion,
            replace,
            answer.Errors.Any
                ? []
                :
                [
                    .. answer.Changes.Select(change => new TablePreview(
                        change.Definition.Name,
                        change.Added.Count,
                        change.Updated.Count,
                        change.Removed.Count,
                        before.Revision == answer.Revision ? KeysOf(before, change) : []
                    )),
                ],
            [
                .. answer.Errors.Items.Select(error =>
                    error with
                    {
                        File = asBrought(error.File),
                        Message = asBrought(error.Message),
                    }
                ),
            ],
            answer.Errors.Count
        );

    private static List<string> KeysOf(Project project, TableChange change)
    {
        var table = project[change.Definition];
        var text = new ProjectText(project);
        return
        [
            .. change
                .Removed.Take(KeysNamed)
                .Select(id =>
                    string.Join(
                        " ",
                        change.Definition.Keys.Select(key =>
                            text.Of(table, table.RowOf(id), key) ?? "–"
                        )
                    )
                ),
        ];
    }

    private List<string> Deeds()
    {
        List<string> deeds = [];
        if (Added > 0)
        {
            deeds.Add($"bring {Counted(Added, "row")}");
        }

        if (Updated > 0)
        {
            deeds.Add($"change {Counted(Updated, "row")}");
        }

        return deeds;
    }

    private string SentenceOfErrors()
    {
        var stand = ErrorCount == 1 ? "stands" : "stand";
        var files = Errors.Select(error => error.File).Distinct(StringComparer.Ordinal).ToList();
        // a fault of a row that is in no file is placed by its table's name
        var where = files.TrueForAll(file => file.Contains('.', StringComparison.Ordinal))
            ? $", in {Counted(files.Count, "file")}"
            : "";
        return $"{Counted(ErrorCount, "error")} {stand} in the way{where}. Nothing has changed.";
    }
}
