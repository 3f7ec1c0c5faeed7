namespace Plenum.Core.Network;

/// <summary>Limits within which an activity can move while something else stays where it is.</summary>
internal static class NetworkFloats
{
    /// <summary>By rank, where each activity may lie at the most if no successor's early dates and no finish move.</summary>
    public static int[] FreeLimits(NetworkModel model)
    {
        var limits = new int[model.Early.Length];
        for (var rank = 0; rank < limits.Length; rank++)
        {
            limits[rank] =
                (model.State[rank] & NetworkModel.Finished) != 0
                    ? NetworkModel.Unlimited
                    : AtFinish(model, rank);
        }

        for (var rank = 0; rank < limits.Length; rank++)
        {
            for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
            {
                var from = model.From[k];
                if (!model.IsActive(k))
                {
                    continue;
                }

                if (from >= 0)
                {
                    limits[from] = Math.Min(limits[from], model.Early[rank] - model.Weight[k]);
                }
                else
                {
                    limits[~from] = Math.Min(
                        limits[~from],
                        model.Allowed(k, ~from, rank, model.Early[rank])
                    );
                }
            }
        }

        return limits;
    }

    /// <summary>Where an activity may lie at the most to end with the project.</summary>
    public static int AtFinish(NetworkModel model, int rank) =>
        (model.State[rank] & NetworkModel.Point) != 0
            ? model.Finish
            : model.TimeOf(rank).PlaceOf(model.Finish) - model.Work[rank];

    /// <summary>Where an activity lies when all its predecessors lie as late as they may.</summary>
    public static int AfterLatePredecessors(NetworkModel model, int rank)
    {
        var at = model.Low[rank];
        if ((model.State[rank] & NetworkModel.Fixed) != 0)
        {
            return at;
        }

        for (var k = model.InStart[rank]; k < model.InStart[rank + 1]; k++)
        {
            if (model.IsActive(k))
            {
                at = Math.Max(at, model.AskedBy(k, rank, model.Late));
            }
        }

        return at;
    }
}
