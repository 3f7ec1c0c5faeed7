using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Parts;

/// <summary>Hours and money that an activity of a part is planned with where nobody has said more.</summary>
internal sealed class CellHours(EditDraft draft)
{
    /// <summary>The median of what sisters of the part have, in hundredths; <see cref="Cell.NoLong"/> for none.</summary>
    public long OfSisters(PartCell cell)
    {
        var row = draft.Before[ElementTable.Definition].RowOf(cell.Part);
        var matrix = draft.Before.ActivityMatrix;
        var part = row < 0 ? -1 : matrix.PartAt(row);
        var column = matrix.ColumnOf(cell.Activity);
        return
            part >= 0
            && column >= 0
            && matrix.CellOf(part, column) is not null
            && CellSisters.Of(matrix, part, column).Median is { } median
            ? median
            : Cell.NoLong;
    }

    /// <summary>
    /// Hours and money of activities of one part: their shares of what it is allotted, exactly divided; hours are
    /// those of sisters where the part is allotted none.
    /// </summary>
    public (long[] Hours, long[] Money) Shares(int part, IReadOnlyList<SetActivity> activities)
    {
        var elements = draft[ElementTable.Definition];
        decimal[] percents = [.. activities.Select(activity => activity.Share)];
        var hours = ShareOut.Of(elements.Long(ElementTable.AllottedHours, part), percents);
        var money = ShareOut.Of(elements.Long(ElementTable.Allotted, part), percents);
        for (var i = 0; i < hours.Length; i++)
        {
            if (!Cell.IsGiven(hours[i]))
            {
                hours[i] = OfSisters(new PartCell(part, activities[i].Activity));
            }
        }

        return (hours, money);
    }
}
