namespace Plenum.Core.Network.Assessment;

/// <summary>How many links lead to and from the two ends of each activity.</summary>
public sealed class LinkCounts
{
    private readonly int[] toStart;
    private readonly int[] toFinish;
    private readonly int[] fromStart;
    private readonly int[] fromFinish;

    public LinkCounts(NetworkInput input)
    {
        toStart = new int[input.Count];
        toFinish = new int[input.Count];
        fromStart = new int[input.Count];
        fromFinish = new int[input.Count];
        for (var link = 0; link < input.LinkCount; link++)
        {
            var type = input.Type[link];
            (LinkType.ToStart(type) ? toStart : toFinish)[input.To[link]]++;
            (LinkType.FromFinish(type) ? fromFinish : fromStart)[input.From[link]]++;
        }
    }

    public int Predecessors(int activity) => toStart[activity] + toFinish[activity];

    public int Successors(int activity) => fromStart[activity] + fromFinish[activity];

    /// <summary>It has predecessors, and none of them drives its start.</summary>
    public bool HasDanglingStart(int activity) => toStart[activity] == 0 && toFinish[activity] > 0;

    /// <summary>It has successors, and its finish drives none of them.</summary>
    public bool HasDanglingFinish(int activity) =>
        fromFinish[activity] == 0 && fromStart[activity] > 0;
}
