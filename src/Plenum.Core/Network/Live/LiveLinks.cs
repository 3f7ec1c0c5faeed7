namespace Plenum.Core.Network.Live;

/// <summary>
/// The links of a live network by the activities that they leave and reach: chains through columns, so that a link is
/// added or taken out without moving others. Activities are ranks of the model, links their places in it.
/// </summary>
internal sealed class LiveLinks
{
    private const int None = -1;

    private readonly int[] firstIn;
    private readonly int[] firstOut;
    private int[] nextIn;
    private int[] nextOut;
    private int[] to;

    public LiveLinks(NetworkModel model)
    {
        var count = model.Early.Length;
        firstIn = new int[count];
        firstOut = new int[count];
        firstIn.AsSpan().Fill(None);
        firstOut.AsSpan().Fill(None);
        var links = model.LinkOf.Length;
        nextIn = new int[links];
        nextOut = new int[links];
        to = new int[links];
        for (var rank = count - 1; rank >= 0; rank--)
        {
            for (var k = model.InStart[rank + 1] - 1; k >= model.InStart[rank]; k--)
            {
                Chain(k, model.Predecessor(k), rank);
            }
        }
    }

    /// <summary>The first link that reaches an activity; −1 if none does.</summary>
    public int FirstIn(int rank) => firstIn[rank];

    /// <summary>The link after one that reaches the same activity.</summary>
    public int NextIn(int k) => nextIn[k];

    /// <summary>The first link that leaves an activity; −1 if none does.</summary>
    public int FirstOut(int rank) => firstOut[rank];

    /// <summary>The link after one that leaves the same activity.</summary>
    public int NextOut(int k) => nextOut[k];

    /// <summary>The activity that a link reaches.</summary>
    public int To(int k) => to[k];

    public void Grow(int capacity)
    {
        Array.Resize(ref nextIn, capacity);
        Array.Resize(ref nextOut, capacity);
        Array.Resize(ref to, capacity);
    }

    public void Chain(int k, int from, int reached)
    {
        to[k] = reached;
        nextIn[k] = firstIn[reached];
        firstIn[reached] = k;
        nextOut[k] = firstOut[from];
        firstOut[from] = k;
    }

    /// <summary>Takes a link out. Time: in the number of links of its two activities.</summary>
    public void Unchain(int k, int from)
    {
        Cut(ref firstIn[to[k]], nextIn, k);
        Cut(ref firstOut[from], nextOut, k);
    }

    private static void Cut(ref int first, int[] next, int k)
    {
        ref var at = ref first;
        while (at != k)
        {
            at = ref next[at];
        }

        at = next[k];
    }
}
