namespace Plenum.Core.Network.Live;

/// <summary>
/// An order of the activities in which every link leads forward, kept so while links are added: only activities between
/// the two ends of a link that leads backward change places (Pearce and Kelly 2006, A dynamic topological sort algorithm
/// for directed acyclic graphs).
/// </summary>
internal sealed class LiveOrder
{
    private readonly int[] placeOf;
    private readonly int[] rankAt;
    private readonly bool[] isSeen;

    public LiveOrder(int count)
    {
        placeOf = new int[count];
        rankAt = new int[count];
        isSeen = new bool[count];
        for (var rank = 0; rank < count; rank++)
        {
            placeOf[rank] = rankAt[rank] = rank;
        }
    }

    public int PlaceOf(int rank) => placeOf[rank];

    public int RankAt(int place) => rankAt[place];

    /// <summary>
    /// Makes room for a link that is not among the links yet.
    /// </summary>
    /// <returns>Each activity that changed places with the place it had; null if the link closes a ring.</returns>
    public List<(int Rank, int Place)>? LetPass(
        int from,
        int to,
        NetworkModel model,
        LiveLinks links
    )
    {
        if (from == to)
        {
            return null;
        }

        if (placeOf[from] < placeOf[to])
        {
            return [];
        }

        List<int> after = [];
        List<int> before = [];
        try
        {
            if (!Reach(to, placeOf[from], from, after, links))
            {
                return null;
            }

            ReachBack(from, placeOf[to], before, model, links);
        }
        finally
        {
            after.ForEach(rank => isSeen[rank] = false);
            before.ForEach(rank => isSeen[rank] = false);
        }

        before.Sort((left, right) => placeOf[left].CompareTo(placeOf[right]));
        after.Sort((left, right) => placeOf[left].CompareTo(placeOf[right]));
        List<int> moved = [.. before, .. after];
        List<(int Rank, int Place)> was = [.. moved.Select(rank => (rank, placeOf[rank]))];
        var places = moved.ConvertAll(rank => placeOf[rank]);
        places.Sort();
        for (var i = 0; i < moved.Count; i++)
        {
            Put(moved[i], places[i]);
        }

        return was;
    }

    /// <summary>Puts activities back to the places that they had.</summary>
    public void Restore(List<(int Rank, int Place)> was)
    {
        foreach (var (rank, place) in was)
        {
            Put(rank, place);
        }
    }

    private void Put(int rank, int place)
    {
        placeOf[rank] = place;
        rankAt[place] = rank;
    }

    /// <summary>What can be reached up to a place; false if that includes an activity.</summary>
    private bool Reach(int start, int lastPlace, int but, List<int> found, LiveLinks links)
    {
        isSeen[start] = true;
        found.Add(start);
        for (var next = 0; next < found.Count; next++)
        {
            for (var k = links.FirstOut(found[next]); k >= 0; k = links.NextOut(k))
            {
                var to = links.To(k);
                if (to == but)
                {
                    return false;
                }

                if (!isSeen[to] && placeOf[to] < lastPlace)
                {
                    isSeen[to] = true;
                    found.Add(to);
                }
            }
        }

        return true;
    }

    private void ReachBack(
        int start,
        int firstPlace,
        List<int> found,
        NetworkModel model,
        LiveLinks links
    )
    {
        isSeen[start] = true;
        found.Add(start);
        for (var next = 0; next < found.Count; next++)
        {
            for (var k = links.FirstIn(found[next]); k >= 0; k = links.NextIn(k))
            {
                var from = model.Predecessor(k);
                if (!isSeen[from] && placeOf[from] > firstPlace)
                {
                    isSeen[from] = true;
                    found.Add(from);
                }
            }
        }
    }
}
