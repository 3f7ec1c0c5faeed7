namespace Plenum.Core.Network;

/// <summary>
/// Activities in an order in which every link leads forward. Time: in the number of activities and links. Where the
/// given order is such an order already, it is kept.
/// </summary>
public static class NetworkOrder
{
    /// <summary>The activity at each place of the order; null if the links form a ring.</summary>
    public static int[]? Of(int count, int[] from, int[] to)
    {
        var order = new int[count];
        if (LeadsForward(from, to))
        {
            for (var i = 0; i < count; i++)
            {
                order[i] = i;
            }

            return order;
        }

        var (start, successor) = Adjacency(count, from, to);
        var waiting = new int[count];
        foreach (var activity in to)
        {
            waiting[activity]++;
        }

        var ready = 0;
        for (var activity = 0; activity < count; activity++)
        {
            if (waiting[activity] == 0)
            {
                order[ready++] = activity;
            }
        }

        for (var next = 0; next < ready; next++)
        {
            var activity = order[next];
            for (var k = start[activity]; k < start[activity + 1]; k++)
            {
                if (--waiting[successor[k]] == 0)
                {
                    order[ready++] = successor[k];
                }
            }
        }

        return ready == count ? order : null;
    }

    /// <summary>
    /// Every group of activities that wait for each other, each as one ring: the shortest one through the activity that
    /// <paramref name="codes"/> puts first, in the order of the links, beginning with that activity.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<int>> Rings(
        int count,
        int[] from,
        int[] to,
        IComparer<int> codes
    )
    {
        var (start, successor) = Adjacency(count, from, to);
        List<IReadOnlyList<int>> rings = [];
        foreach (var group in Components(count, start, successor))
        {
            var first = group.Min(codes)!;
            if (RingThrough(first, group, start, successor) is { } ring)
            {
                rings.Add(ring);
            }
        }

        rings.Sort((left, right) => codes.Compare(left[0], right[0]));
        return rings;
    }

    /// <summary>The links by the activity that they leave, as one array with a start for each activity.</summary>
    internal static (int[] Start, int[] Successor) Adjacency(int count, int[] from, int[] to)
    {
        var start = new int[count + 1];
        foreach (var activity in from)
        {
            start[activity + 1]++;
        }

        for (var activity = 0; activity < count; activity++)
        {
            start[activity + 1] += start[activity];
        }

        var next = start.AsSpan(0, count).ToArray();
        var successor = new int[from.Length];
        for (var link = 0; link < from.Length; link++)
        {
            successor[next[from[link]]++] = to[link];
        }

        return (start, successor);
    }

    private static bool LeadsForward(int[] from, int[] to)
    {
        for (var link = 0; link < from.Length; link++)
        {
            if (from[link] >= to[link])
            {
                return false;
            }
        }

        return true;
    }

    private static List<int>? RingThrough(
        int first,
        HashSet<int> group,
        int[] start,
        int[] successor
    )
    {
        Dictionary<int, int> reachedFrom = [];
        var queue = new Queue<int>([first]);
        while (queue.TryDequeue(out var activity))
        {
            for (var k = start[activity]; k < start[activity + 1]; k++)
            {
                var next = successor[k];
                if (next == first)
                {
                    List<int> ring = [activity];
                    while (ring[^1] != first)
                    {
                        ring.Add(reachedFrom[ring[^1]]);
                    }

                    ring.Reverse();
                    return ring;
                }

                if (group.Contains(next) && reachedFrom.TryAdd(next, activity))
                {
                    queue.Enqueue(next);
                }
            }
        }

        return null; // an activity alone that does not lead back to itself
    }

    /// <summary>Groups in which everything can be reached from everything (Tarjan 1972, without recursion).</summary>
    private static IEnumerable<HashSet<int>> Components(int count, int[] start, int[] successor)
    {
        var number = new int[count];
        var low = new int[count];
        var next = new int[count];
        var isOpen = new bool[count];
        var open = new Stack<int>();
        var path = new Stack<int>();
        var numbered = 0;
        for (var root = 0; root < count; root++)
        {
            if (number[root] != 0)
            {
                continue;
            }

            Enter(root);
            while (path.TryPeek(out var activity))
            {
                if (next[activity] < start[activity + 1])
                {
                    var follower = successor[next[activity]++];
                    if (number[follower] == 0)
                    {
                        Enter(follower);
                    }
                    else if (isOpen[follower])
                    {
                        low[activity] = Math.Min(low[activity], number[follower]);
                    }

                    continue;
                }

                path.Pop();
                if (path.TryPeek(out var before))
                {
                    low[before] = Math.Min(low[before], low[activity]);
                }

                if (low[activity] == number[activity])
                {
                    HashSet<int> group = [];
                    int member;
                    do
                    {
                        member = open.Pop();
                        isOpen[member] = false;
                        group.Add(member);
                    } while (member != activity);

                    yield return group;
                }
            }
        }

        void Enter(int activity)
        {
            number[activity] = low[activity] = ++numbered;
            next[activity] = start[activity];
            isOpen[activity] = true;
            open.Push(activity);
            path.Push(activity);
        }
    }
}
