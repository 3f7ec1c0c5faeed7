using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Core.Network;

/// <summary>The network cannot be computed; the message says why, with codes, and what to do.</summary>
public sealed class NetworkException(string message) : Exception(message)
{
    private const int LongestShown = 50;

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
            "The network cannot be computed: "
                + string.Join(
                    "; ",
                    RingsOf(input.Codes, input.From, input.To)
                        .Select(ring => Say(ring, input.Codes))
                )
                + ". Take out the link that is wrong."
        );
}
