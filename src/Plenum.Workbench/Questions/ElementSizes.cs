using System.Runtime.CompilerServices;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Questions;

/// <summary>
/// How large each element is among its sisters. An element's size is what it was allotted, or its budget where it was
/// allotted nothing; the whole that its parts share is the larger of its own allotted amount and the sum of their
/// sizes, so that a gap takes its share of the whole. Money in minor units. One walk over all elements, then kept
/// with the project value.
/// </summary>
public sealed class ElementSizes
{
    private static readonly ConditionalWeakTable<Project, ElementSizes> Kept = [];

    private readonly ElementTotals totals;

    private ElementSizes(Project project)
    {
        var tree = project.Tree;
        totals = project.Totals;
        Parts = new int[tree.Count];
        Place = new int[tree.Count];
        Before = new long[tree.Count];
        Whole = new long[tree.Count];
        for (var row = 0; row < tree.Count; row++)
        {
            if (tree.Parent[row] is var parent and >= 0)
            {
                Place[row] = ++Parts[parent];
                Before[row] = Whole[parent];
                Whole[parent] += Size(row);
            }
        }

        for (var row = 0; row < tree.Count; row++)
        {
            Whole[row] = Math.Max(Whole[row], totals.Allotted[row]);
            Missing += Math.Max(0, totals.Gap[row]);
        }

        Person = tree.Inherited(ElementTable.Person);
    }

    /// <summary>Number of parts of each element.</summary>
    public int[] Parts { get; }

    /// <summary>Place of each element among its sisters, from 1; 0 for the root.</summary>
    public int[] Place { get; }

    /// <summary>Sum of the sizes of the sisters before it.</summary>
    public long[] Before { get; }

    /// <summary>What the parts of each element share; 0 for one that has neither parts nor an allotted amount.</summary>
    public long[] Whole { get; }

    /// <summary>What belongs to no part, over all elements.</summary>
    public long Missing { get; }

    /// <summary>Id of the person in charge, own or inherited; <see cref="Cell.NoInt"/> for none.</summary>
    public int[] Person { get; }

    public static ElementSizes Of(Project project) =>
        Kept.GetValue(project, static value => new ElementSizes(value));

    public long Size(int row) =>
        totals.Allotted[row] == Cell.NoLong ? totals.Budget[row] : totals.Allotted[row];

    /// <summary>Share of an element in the whole project, 0 to 1; null while the project has no size.</summary>
    public decimal? ShareOfProject(int row) =>
        Ratio.Of(row == 0 ? Math.Max(Size(0), Whole[0]) : Size(row), Math.Max(Size(0), Whole[0]));
}
