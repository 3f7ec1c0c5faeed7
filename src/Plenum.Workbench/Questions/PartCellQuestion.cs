using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>What is known of one cell of the matrix, and what do sisters of its part have there?</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Activity">The activity.</param>
public sealed record PartCellQuestion(int Part, string Activity)
{
    /// <summary>Sisters that are named one by one; further ones are counted.</summary>
    private const int MostSisters = 8;

    /// <summary>Cost: one step for each part of the type.</summary>
    /// <exception cref="QuestionException">The part is no longer there, or does not need the activity.</exception>
    public PartCellAnswer Ask(Project project)
    {
        var tree = project.Tree;
        var matrix = project.ActivityMatrix;
        var row = tree.Elements.RowOf(Part);
        var part = row < 0 ? -1 : matrix.PartAt(row);
        var column = matrix.ColumnOf(Activity);
        if (part < 0 || column < 0 || matrix.CellOf(part, column) is not { } cell)
        {
            throw new QuestionException($"The part does not need the activity \"{Activity}\".");
        }

        var sisters = CellSisters.Of(matrix, part, column);
        var most = sisters.Cells.Max(one => one.Hours);
        var person = tree.Inherited(ElementTable.Person)[row];
        var set = project[WorkSetTable.Definition];
        var parent = tree.Parent[row];
        return new PartCellAnswer(
            Activity,
            tree.Code(row),
            tree.Name(row),
            parent < 0 ? "" : tree.Name(parent),
            cell.State,
            cell.PackageRow < 0 ? null : tree.Code(cell.PackageRow),
            cell.PackageRow < 0 ? null : tree.Name(cell.PackageRow),
            cell.Hours / 100m,
            cell.ReasonRow < 0
                ? null
                : project[NotNeededTable.Definition].Texts(NotNeededTable.Reason)[cell.ReasonRow],
            sisters.Circle,
            [
                .. Nearest(sisters, part)
                    .Select(at => new SisterCell(
                        NameOf(tree, sisters.Circle, matrix.PartRows[sisters.Parts[at]]),
                        sisters.Parts[at] == part,
                        sisters.Cells[at].State,
                        sisters.Cells[at].Hours / 100m,
                        most == 0 ? 0 : (double)sisters.Cells[at].Hours / most
                    )),
            ],
            sisters.Parts.Count,
            sisters.Median / 100m,
            Cell.IsGiven(person) ? PersonNames.Of(project, person) : null
        )
        {
            Hazards = set.Texts(WorkSetTable.Hazards)[cell.SetRow],
            Planned = sisters
                .Parts.Zip(sisters.Cells)
                .Count(pair => pair.First != part && pair.Second.State == ActivityState.Planned),
            ShareHours =
                ShareOut.Of(
                    tree.Elements.Longs(ElementTable.AllottedHours)[row],
                    [set.Decimals(WorkSetTable.Share)[cell.SetRow]]
                )
                    is [var hours]
                && Cell.IsGiven(hours)
                    ? hours / 100m
                    : null,
        };
    }

    /// <summary>The first of the sisters, but the part itself among them.</summary>
    private static IEnumerable<int> Nearest(CellSisters sisters, int part)
    {
        var own = sisters.Parts.ToList().IndexOf(part);
        var from = Math.Clamp(
            own - (MostSisters / 2),
            0,
            Math.Max(0, sisters.Parts.Count - MostSisters)
        );
        return Enumerable.Range(from, Math.Min(MostSisters, sisters.Parts.Count));
    }

    private static string NameOf(ElementTree tree, SisterCircle circle, int row) =>
        circle switch
        {
            SisterCircle.SameNameBesideParent => tree.Name(tree.Parent[row]),
            SisterCircle.SameParent or SisterCircle.None => tree.Name(row),
            _ => $"{tree.Code(row)} {tree.Name(row)}",
        };
}

/// <param name="Activity">The activity.</param>
/// <param name="PartCode">Code of the part.</param>
/// <param name="PartName">Its name.</param>
/// <param name="ParentName">Name of the element above it.</param>
/// <param name="State">What is known.</param>
/// <param name="Package">Code of the package that carries it out; null for none.</param>
/// <param name="PackageName">Its name.</param>
/// <param name="Hours">Hours of what is planned.</param>
/// <param name="Reason">Why it is not needed; null for none.</param>
/// <param name="Circle">How near the sisters stand.</param>
/// <param name="Sisters">Parts that it is compared with, itself among them; some of them where there are many.</param>
/// <param name="SisterCount">All of them, itself among them.</param>
/// <param name="Median">Median hours of the sisters; null if none has hours.</param>
/// <param name="Person">Name of the person in charge; null for nobody.</param>
public sealed record PartCellAnswer(
    string Activity,
    string PartCode,
    string PartName,
    string ParentName,
    ActivityState State,
    string? Package,
    string? PackageName,
    decimal Hours,
    string? Reason,
    SisterCircle Circle,
    IReadOnlyList<SisterCell> Sisters,
    int SisterCount,
    decimal? Median,
    string? Person
)
{
    /// <summary>Usual hazards of the activity, separated by semicolons; null for none.</summary>
    public string? Hazards { get; init; }

    /// <summary>Its share of the hours that the part is allotted; null if none are.</summary>
    public decimal? ShareHours { get; init; }

    /// <summary>Sisters that have it planned.</summary>
    public int Planned { get; init; }

    /// <summary>Hours that it would be planned with: those of sisters, else its share; null if neither is known.</summary>
    public decimal? UsualHours => Median ?? ShareHours;
}

/// <param name="Name">What tells it from the others.</param>
/// <param name="IsOwn">It is the part that is asked about.</param>
/// <param name="State">What is known of its cell.</param>
/// <param name="Hours">Hours of what is planned.</param>
/// <param name="Part">Those hours as a part of the most among them, 0 to 1.</param>
public sealed record SisterCell(
    string Name,
    bool IsOwn,
    ActivityState State,
    decimal Hours,
    double Part
);
