using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Core.Network;

/// <summary>The network cannot be computed; the message says why, with codes.</summary>
/// <param name="reason">Why, as a clause that follows a colon.</param>
public sealed class NetworkException(string reason)
    : Exception($"The network cannot be computed: {reason}.")
{
    private const int LongestShown = 50;

    /// <summary>Why it cannot be computed.</summary>
    public string Reason => reason;

    /// <summary>The activity that leads beyond its calendar; null where it is not about one.</summary>
    public int? Activity { get; init; }

    /// <summary>The link whose lag leads beyond its calendar; null where it is not about one.</summary>
    public int? Link { get; init; }

    /// <summary>The rings of a network, each as the codes of its activities in the order of the links.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> RingsOf(
        IReadOnlyList<string> codes,
        int[] from,
        int[] to
    ) =>
        NetworkOrder.Rings(
            codes.Count,
            from,
            to,
            Comparer<int>.Create(
                (left, right) => NaturalOrder.Codes.Compare(codes[left], codes[right])
            )
        );

    /// <summary>A ring as a sentence: how many activities, and each by its code in the order of the links.</summary>
    public static string Say(IReadOnlyList<int> ring, IReadOnlyList<string> codes)
    {
        List<string> names = [.. ring.Select(activity => codes[activity]), codes[ring[0]]];
        var shown = names.Count <= LongestShown ? names : [.. names.Take(LongestShown), "…"];
        return string.Create(
            CultureInfo.InvariantCulture,
            $"the links form a ring of {ring.Count}: {string.Join(" before ", shown)}"
        );
    }

    internal static NetworkException OfRings(NetworkInput input) =>
        new(
            string.Join(
                "; ",
                RingsOf(input.Codes, input.From, input.To).Select(ring => Say(ring, input.Codes))
            )
        );
}
