using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Network;

/// <summary>
/// How a milestone's instant is read as a date: as the day that ends there, on which what drives it ends; as the day that
/// begins there where only starts without lag drive it, or nothing does.
/// </summary>
internal static class MilestoneDates
{
    /// <summary>By rank, whether an activity without work is dated by the day that begins at its instant.</summary>
    public static bool[] BeginThere(NetworkModel model)
    {
        var begins = new bool[model.Early.Length];
        for (var rank = 0; rank < begins.Length; rank++)
        {
            var isUnfinishedPoint =
                (model.State[rank] & (NetworkModel.Point | NetworkModel.Finished))
                == NetworkModel.Point;
            begins[rank] = isUnfinishedPoint && Begins(model, rank, begins);
        }

        return begins;
    }

    private static bool Begins(NetworkModel model, int rank, bool[] begins)
    {
        var activity = model.Order[rank];
        var isStarted = (model.State[rank] & NetworkModel.Started) != 0;
        if (isStarted && model.Input.Duration[activity] > 0)
        {
            return false; // work of which nothing remains has ended
        }

        var conditions = model.Input.Conditions;
        if ((model.State[rank] & NetworkModel.Fixed) != 0)
        {
            return !isStarted && conditions.StartOn[activity] != Cell.NoInt;
        }

        var finishNoEarlier = conditions.FinishNoEarlier[activity];
        if (finishNoEarlier != Cell.NoInt && finishNoEarlier + 1 == model.Early[rank])
        {
            return false;
        }

        for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
        {
            if (
                model.IsActive(k)
                && model.AskedBy(k, rank, model.Early) == model.Early[rank]
                && !LeavesFromBeginning(model, k, begins)
            )
            {
                return false;
            }
        }

        return true;
    }

    private static bool LeavesFromBeginning(NetworkModel model, int k, bool[] begins)
    {
        var link = model.LinkOf[k];
        if (model.Input.Lag[link] != 0)
        {
            return false;
        }

        var from = model.Predecessor(k);
        var isUnfinishedPoint =
            (model.State[from] & (NetworkModel.Point | NetworkModel.Finished))
            == NetworkModel.Point;
        return isUnfinishedPoint ? begins[from] : !LinkType.FromFinish(model.Input.Type[link]);
    }
}
