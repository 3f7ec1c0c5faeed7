using Plenum.Core.Network;

namespace Plenum.Core;

/// <summary>Where the network may say the name of a package that is its own activity.</summary>
internal static class LinkedNames
{
    private const int ActivityEnd = 0;

    /// <summary>The code of a package, and those of what is linked behind it. Time: the links.</summary>
    public static IEnumerable<string> Of(Project project, int element)
    {
        var elements = project.Tree.Elements;
        yield return elements.Codes[element]!;
        var links = project[LinkTable.Definition];
        var activities = project[ActivityTable.Definition];
        for (var row = 0; row < links.Count; row++)
        {
            var (from, id) = LinkTable.From.DecodeReference(links.Ints(LinkTable.From)[row]);
            if (from == ActivityEnd || from < 0 || id != elements.Ids[element])
            {
                continue;
            }

            var (to, end) = LinkTable.To.DecodeReference(links.Ints(LinkTable.To)[row]);
            if (to >= 0)
            {
                var table = to == ActivityEnd ? activities : elements;
                if (table.RowOf(end) is var at and >= 0)
                {
                    yield return table.Codes[at]!;
                }
            }
        }
    }
}
