using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;

namespace Plenum.Workbench.Maps;

/// <summary>What of a project is looked up: equal for all who ask, so that its index is made once for a value.</summary>
public sealed record LookupQuestion
{
    public static readonly LookupQuestion Whole = new();
}

/// <summary>Something that was found: an element or a person.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="What">What it is and where, such as "Work package in Intake tower".</param>
/// <param name="Person">The person's code again; null for an element.</param>
public sealed record LookupHit(string Code, string Name, string What, string? Person);

/// <summary>
/// Finds elements and people by code or name, whatever the case, the accents and the marks between words. Best first:
/// the whole code; the beginning of a code; the beginning of a word of a name or of a segment of a code; all that was typed
/// between spaces, in any order; the letters anywhere. Among equals people come first, then elements in depth-first
/// order. Made once for a project value, from any thread; asked from any thread. Time to make it: linear in the length
/// of all codes and names; to ask: at most a few readings from end to end of about 40 bytes for each element.
/// </summary>
public sealed class Lookup
{
    /// <summary>What a list under a search field takes.</summary>
    public const int UsualLimit = 12;

    private readonly Project project;
    private readonly string[] levelNames;
    private readonly Sought elements;
    private readonly Sought people;

    public Lookup(Project project)
    {
        this.project = project;
        levelNames = LevelNames.Of(project);
        elements = new Sought(project.Tree.Elements, ElementTable.Name);
        people = new Sought(project[PersonTable.Definition], PersonTable.Name);
    }

    /// <summary>What fits a few letters best; nothing if there is neither letter nor digit in them.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="limit">Most that is wanted. People take at most a third, unless there are too few elements.</param>
    public IReadOnlyList<LookupHit> Find(string text, int limit = UsualLimit)
    {
        var words = FoldedText.Of(text);
        if (words.Length == 0 || limit < 1)
        {
            return [];
        }

        List<byte[]> pieces =
        [
            .. text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
                .Select(FoldedText.Of)
                .Where(piece => piece.Length > 0),
        ];
        var found = elements.Find(words, pieces, limit);
        var persons = people.Find(words, pieces, limit);
        var personsShown = Math.Min(persons.Count, Math.Max(limit / 3, limit - found.Count));
        return
        [
            .. persons
                .Take(personsShown)
                .Select(hit => (hit.Rank, Hit: PersonHit(hit.Row)))
                .Concat(
                    found
                        .Take(limit - personsShown)
                        .Select(hit => (hit.Rank, Hit: ElementHit(hit.Row)))
                )
                .OrderBy(hit => hit.Rank)
                .Select(hit => hit.Hit),
        ];
    }

    private LookupHit ElementHit(int row)
    {
        var tree = project.Tree;
        var what = tree.Kind(row) switch
        {
            ElementTable.WorkPackage => "Work package",
            ElementTable.PlanningPackage => "Planning package",
            _ => levelNames[tree.Level[row] - 1],
        };
        return new LookupHit(
            tree.Code(row),
            tree.Name(row),
            tree.Parent[row] <= 0 ? what : $"{what} in {tree.Name(tree.Parent[row])}",
            null
        );
    }

    private LookupHit PersonHit(int row)
    {
        var table = project[PersonTable.Definition];
        var units = project[UnitTable.Definition];
        var unit = table.Ints(PersonTable.Unit)[row];
        var code = table.Codes[row]!;
        return new LookupHit(
            code,
            table.Texts(PersonTable.Name)[row] ?? code,
            unit == Cell.NoInt
                ? "Person"
                : "Person in "
                    + (
                        units.Texts(UnitTable.Name)[units.RowOf(unit)]
                        ?? units.Codes[units.RowOf(unit)]
                    ),
            code
        );
    }

    /// <summary>Codes and names of one table.</summary>
    private sealed class Sought
    {
        private readonly FoldedLines codes;
        private readonly FoldedLines names;

        public Sought(Table table, ColumnDefinition name)
        {
            codes = new FoldedLines(table.Count, row => table.Codes[row]!);
            names = new FoldedLines(table.Count, row => table.Texts(name)[row] ?? "");
        }

        /// <summary>Rows with their rank, best first.</summary>
        public List<(int Rank, int Row)> Find(byte[] words, IReadOnlyList<byte[]> pieces, int limit)
        {
            List<(int Rank, int Row)> found = [];
            HashSet<int> taken = [];
            IEnumerable<int>[] ranks =
            [
                codes.Equal(words),
                codes.BeginningWith(words),
                Merged(codes.WithWords(words), names.WithWords(words)),
                WithAll(pieces),
                Merged(codes.Containing(words), names.Containing(words)),
            ];
            for (var rank = 0; rank < ranks.Length; rank++)
            {
                foreach (var row in ranks[rank])
                {
                    if (found.Count == limit)
                    {
                        return found;
                    }

                    if (taken.Add(row))
                    {
                        found.Add((rank, row));
                    }
                }
            }

            return found;
        }

        /// <summary>Rows whose code and name have all pieces between them, in any order; none for one piece.</summary>
        private IEnumerable<int> WithAll(IReadOnlyList<byte[]> pieces)
        {
            if (pieces.Count < 2)
            {
                return [];
            }

            var longest = pieces.MaxBy(piece => piece.Length)!;
            byte[][] others = [.. pieces.Where(piece => piece != longest)];
            return Merged(codes.WithWords(longest), names.WithWords(longest))
                .Where(row =>
                    Array.TrueForAll(
                        others,
                        piece => names.HasWords(row, piece) || codes.HasWords(row, piece)
                    )
                );
        }

        /// <summary>Two rising sequences as one, each number once.</summary>
        private static IEnumerable<int> Merged(IEnumerable<int> left, IEnumerable<int> right)
        {
            using var lefts = left.GetEnumerator();
            using var rights = right.GetEnumerator();
            var hasLeft = lefts.MoveNext();
            var hasRight = rights.MoveNext();
            while (hasLeft || hasRight)
            {
                var least =
                    !hasRight || (hasLeft && lefts.Current <= rights.Current)
                        ? lefts.Current
                        : rights.Current;
                yield return least;
                if (hasLeft && lefts.Current == least)
                {
                    hasLeft = lefts.MoveNext();
                }

                if (hasRight && rights.Current == least)
                {
                    hasRight = rights.MoveNext();
                }
            }
        }
    }
}
