using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown;

/// <summary>What is known of an activity that a part needs by its type.</summary>
public enum ActivityState : byte
{
    /// <summary>Neither planned nor ruled out: somebody has to decide.</summary>
    Missing = 0,

    /// <summary>A package below the part names it.</summary>
    Planned = 1,

    /// <summary>It is listed as not needed, with the reason.</summary>
    NotNeeded = 2,

    /// <summary>Planned and ruled out: one of the two is wrong.</summary>
    Both = 3,
}

/// <summary>A column of the matrix: an activity that stands in at least one work set.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="Facet">Its facet in the first work set that has it; empty for none.</param>
public sealed record ActivityColumn(string Activity, string Facet);

/// <summary>A cell of the matrix.</summary>
/// <param name="Column">Number of its column.</param>
/// <param name="State">What is known.</param>
/// <param name="Hours">Hours of what is planned for it, in hundredths.</param>
/// <param name="PackageRow">Position of the first element that names the activity; −1 for none.</param>
/// <param name="ReasonRow">Row in the table of what is not needed; −1 for none.</param>
/// <param name="SetRow">Row of the activity in the table of work sets.</param>
public readonly record struct MatrixCell(
    int Column,
    ActivityState State,
    long Hours,
    int PackageRow,
    int ReasonRow,
    int SetRow
)
{
    /// <summary>It is said once whether the work is planned or not needed.</summary>
    public bool IsDecided => State is ActivityState.Planned or ActivityState.NotNeeded;
}

/// <summary>
/// Parts against activities: a row for every element whose part type has a work set, a cell for every activity of the
/// set. Source: ISO 19008 and NORSOK Z-014 (parts by activities); what a cell says is a definition of our own. Cost:
/// one walk over the elements, with a step for each part above an element that names an activity.
/// </summary>
public sealed class ActivityMatrix
{
    private readonly ElementTree tree;
    private readonly MatrixColumns columns;
    private readonly int[] partRows;
    private readonly int[] typeOfPart;
    private readonly int[] start;
    private readonly byte[] state;
    private readonly long[] hours;
    private readonly int[] packageRow;
    private readonly int[] reasonRow;
    private readonly int[] decidedBefore;
    private readonly Lazy<RowGroups> partsOfType;

    /// <param name="tree">The breakdown.</param>
    /// <param name="workSets">Activities by part type.</param>
    /// <param name="notNeeded">What is ruled out.</param>
    /// <param name="hoursOfRow">Hours of each element with all below it, in hundredths.</param>
    public ActivityMatrix(
        ElementTree tree,
        Table workSets,
        Table notNeeded,
        ReadOnlySpan<long> hoursOfRow
    )
    {
        this.tree = tree;
        columns = new MatrixColumns(workSets);
        var types = tree.Elements.Ints(ElementTable.PartType);
        List<int> rows = [];
        List<int> partTypes = [];
        for (var row = 0; row < types.Length; row++)
        {
            if (Cell.IsGiven(types[row]) && columns.SetOf(types[row]) is var set and >= 0)
            {
                rows.Add(row);
                partTypes.Add(set);
            }
        }

        partRows = [.. rows];
        typeOfPart = [.. partTypes];
        start = new int[partRows.Length + 1];
        for (var part = 0; part < partRows.Length; part++)
        {
            start[part + 1] = start[part] + columns.Activities(typeOfPart[part]).Length;
        }

        state = new byte[start[^1]];
        hours = new long[state.Length];
        packageRow = new int[state.Length];
        packageRow.AsSpan().Fill(-1);
        reasonRow = new int[state.Length];
        reasonRow.AsSpan().Fill(-1);
        Plan(hoursOfRow);
        RuleOut(notNeeded);
        decidedBefore = new int[partRows.Length + 1];
        for (var part = 0; part < partRows.Length; part++)
        {
            var decided = 0;
            for (var cell = start[part]; cell < start[part + 1]; cell++)
            {
                decided += state[cell] is 1 or 2 ? 1 : 0;
            }

            decidedBefore[part + 1] = decidedBefore[part] + decided;
        }

        partsOfType = new(() => RowGroups.By(typeOfPart, columns.SetCount));
    }

    private ActivityMatrix(ElementTree tree, ActivityMatrix same)
    {
        this.tree = tree;
        columns = same.columns;
        partRows = same.partRows;
        typeOfPart = same.typeOfPart;
        start = same.start;
        state = same.state;
        hours = same.hours;
        packageRow = same.packageRow;
        reasonRow = same.reasonRow;
        decidedBefore = same.decidedBefore;
        partsOfType = same.partsOfType;
    }

    /// <summary>All activities of all work sets: by facet, in the order of the trade, then by their place in the set.</summary>
    public IReadOnlyList<ActivityColumn> Columns => columns.All;

    public ElementTree Tree => tree;

    /// <summary>Positions of the parts, in depth-first order.</summary>
    public ReadOnlySpan<int> PartRows => partRows;

    /// <summary>Number of all cells.</summary>
    public int CellCount => state.Length;

    /// <summary>Number of cells in which it is decided whether the work is planned or not needed.</summary>
    public int DecidedCount => decidedBefore[^1];

    /// <summary>The same matrix over elements of which only cells that it does not use have changed.</summary>
    public ActivityMatrix Over(ElementTree other) => new(other, this);

    /// <summary>Numbers of the parts that stand at positions of a range.</summary>
    public (int First, int End) PartsIn(int firstRow, int endRow) =>
        (FirstFrom(firstRow), FirstFrom(endRow));

    /// <summary>Number of the part at a position; −1 for an element that is none.</summary>
    public int PartAt(int row) =>
        Array.BinarySearch(partRows, row) is var part and >= 0 ? part : -1;

    /// <summary>Number of cells of a range of parts, and how many of them are decided.</summary>
    public (int Decided, int Cells) Count(int firstPart, int endPart) =>
        (decidedBefore[endPart] - decidedBefore[firstPart], start[endPart] - start[firstPart]);

    /// <summary>The cells of a part, in the order of its work set.</summary>
    public IEnumerable<MatrixCell> Cells(int part)
    {
        for (var cell = start[part]; cell < start[part + 1]; cell++)
        {
            yield return At(part, cell);
        }
    }

    /// <summary>The cell of a part in a column; null where its type does not need the activity.</summary>
    public MatrixCell? CellOf(int part, int column) =>
        columns.PlaceOf(typeOfPart[part], column) is var place and >= 0
            ? At(part, start[part] + place)
            : null;

    /// <summary>The part's type needs the activity of the column.</summary>
    public bool Needs(int part, int column) => columns.PlaceOf(typeOfPart[part], column) >= 0;

    /// <summary>Number of an activity's column; −1 for one that stands in no work set.</summary>
    public int ColumnOf(string activity) => columns.NumberOf(activity);

    /// <summary>Undecided cells of a range of parts, by column; those that say both are among them.</summary>
    public int[] Undecided(int firstPart, int endPart)
    {
        var counts = new int[Columns.Count];
        for (var part = firstPart; part < endPart; part++)
        {
            if (decidedBefore[part + 1] - decidedBefore[part] == start[part + 1] - start[part])
            {
                continue;
            }

            var activities = columns.Activities(typeOfPart[part]);
            for (var place = 0; place < activities.Length; place++)
            {
                counts[activities[place]] += state[start[part] + place] is 0 or 3 ? 1 : 0;
            }
        }

        return counts;
    }

    /// <summary>Most hours of any planned cell in a range of parts, by column, in hundredths.</summary>
    public long[] MostHours(int firstPart, int endPart)
    {
        var most = new long[Columns.Count];
        for (var part = firstPart; part < endPart; part++)
        {
            var activities = columns.Activities(typeOfPart[part]);
            for (var place = 0; place < activities.Length; place++)
            {
                ref var known = ref most[activities[place]];
                known = Math.Max(known, hours[start[part] + place]);
            }
        }

        return most;
    }

    /// <summary>The parts of the same type, itself among them, in order.</summary>
    internal ReadOnlySpan<int> PartsLike(int part) => partsOfType.Value[typeOfPart[part]];

    private MatrixCell At(int part, int cell)
    {
        var place = cell - start[part];
        return new MatrixCell(
            columns.Activities(typeOfPart[part])[place],
            (ActivityState)state[cell],
            hours[cell],
            packageRow[cell],
            reasonRow[cell],
            columns.SetRows(typeOfPart[part])[place]
        );
    }

    private int FirstFrom(int row) =>
        Array.BinarySearch(partRows, row) is var part && part < 0 ? ~part : part;

    /// <summary>Walks once over the elements with the parts that are open above each.</summary>
    private void Plan(ReadOnlySpan<long> hoursOfRow)
    {
        var activities = tree.Elements.Texts(ElementTable.Activity);
        var counted = new int[state.Length];
        Stack<int> open = [];
        var next = 0;
        for (var row = 0; row < activities.Length; row++)
        {
            while (open.Count > 0 && tree.SubtreeEnd[partRows[open.Peek()]] <= row)
            {
                open.Pop();
            }

            if (next < partRows.Length && partRows[next] == row)
            {
                open.Push(next++);
            }

            if (open.Count == 0 || activities[row] is not { } activity)
            {
                continue;
            }

            var column = columns.NumberOf(activity);
            foreach (var part in open)
            {
                var place = column < 0 ? -1 : columns.PlaceOf(typeOfPart[part], column);
                var cell = start[part] + place;
                if (place < 0 || row < counted[cell])
                {
                    continue;
                }

                // what lies below an element that names the activity is in its hours already
                counted[cell] = tree.SubtreeEnd[row];
                state[cell] |= (byte)ActivityState.Planned;
                hours[cell] += hoursOfRow[row];
                packageRow[cell] = packageRow[cell] < 0 ? row : packageRow[cell];
            }
        }
    }

    private void RuleOut(Table notNeeded)
    {
        var elements = notNeeded.Ints(NotNeededTable.Element);
        var activities = notNeeded.Texts(NotNeededTable.Activity);
        for (var row = 0; row < notNeeded.Count; row++)
        {
            var part = PartAt(tree.Elements.RowOf(elements[row]));
            var column = part < 0 ? -1 : columns.NumberOf(activities[row]!);
            if (column >= 0 && columns.PlaceOf(typeOfPart[part], column) is var place and >= 0)
            {
                state[start[part] + place] |= (byte)ActivityState.NotNeeded;
                reasonRow[start[part] + place] = row;
            }
        }
    }
}
