using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens of people: who is in charge, seen from a picked person. An element has the person that it or the nearest
/// ancestor names. A branch without one says what its packages say together: nobody, if none of them has somebody; the
/// picked person or the unit, if all that have somebody are theirs; else other people. A package that nobody answers for
/// is seen on its own strip.
/// </summary>
internal static class PeopleLens
{
    private const byte Picked = 0;
    private const byte SameUnit = 1;
    private const byte Others = 2;
    private const byte Nobody = 3;

    /// <param name="project">The project.</param>
    /// <param name="person">Code of the picked person; null for none.</param>
    /// <exception cref="QuestionException">No person has the code.</exception>
    public static Lens Of(Project project, string? person)
    {
        var people = project[PersonTable.Definition];
        var picked = person is null ? -1 : people.RowOfCode(person);
        if (person is not null && picked < 0)
        {
            throw new QuestionException($"No person has the code \"{person}\".");
        }

        var tree = project.Tree;
        var inCharge = tree.Inherited(ElementTable.Person);
        var classOfPerson = ClassesOfPeople(people, picked);
        var classOf = new byte[tree.Count];
        var seen = new byte[tree.Count];
        for (var row = classOf.Length - 1; row >= 0; row--)
        {
            var own =
                inCharge[row] == Cell.NoInt ? Nobody : classOfPerson[people.RowOf(inCharge[row])];
            if (tree.PackageOfRow[row] >= 0)
            {
                seen[row] = (byte)(1 << own);
            }

            classOf[row] = own != Nobody ? own : Together(seen[row]);
            if (tree.Parent[row] is var parent and >= 0)
            {
                seen[parent] |= seen[row];
            }
        }

        var name = picked < 0 ? null : NameOf(people, picked);
        return new Lens(
            project,
            new LensHead(
                new LensText(
                    "People",
                    name is null
                        ? "Who answers for each part"
                        : $"Who answers for each part; {name} is picked",
                    null
                ),
                new LensLegend("Person in charge", Classes(project, picked, name))
            ),
            classOf,
            row => inCharge[row] == Cell.NoInt ? "" : NameOf(people, people.RowOf(inCharge[row]))
        );
    }

    private static byte[] ClassesOfPeople(Table people, int picked)
    {
        var units = people.Ints(PersonTable.Unit);
        var classes = new byte[people.Count];
        for (var row = 0; row < classes.Length; row++)
        {
            classes[row] =
                row == picked ? Picked
                : picked >= 0 && units[picked] != Cell.NoInt && units[row] == units[picked]
                    ? SameUnit
                : Others;
        }

        return classes;
    }

    /// <summary>What the packages of a branch say together.</summary>
    private static byte Together(byte seen)
    {
        var named = seen & ~(1 << Nobody);
        return named switch
        {
            0 => Nobody,
            1 << Picked => Picked,
            _ when (named & (1 << Others)) == 0 => SameUnit,
            _ => Others,
        };
    }

    private static LensClass[] Classes(Project project, int picked, string? name)
    {
        var isPicked = picked >= 0;
        var unit = isPicked
            ? project[PersonTable.Definition].Ints(PersonTable.Unit)[picked]
            : Cell.NoInt;
        var unitName = unit == Cell.NoInt ? null : UnitName(project[UnitTable.Definition], unit);
        return
        [
            new("picked", name ?? "picked person", "ink2", Listed: isPicked),
            new(
                "same_unit",
                unitName is null ? "same unit" : "same unit, " + unitName,
                "c1",
                Listed: unitName is not null
            ),
            new("others", isPicked ? "other people" : "somebody", "none"),
            new("nobody", "nobody", "unf2"),
        ];
    }

    private static string NameOf(Table people, int row) =>
        people.Texts(PersonTable.Name)[row] ?? people.Codes[row]!;

    private static string UnitName(Table units, int id)
    {
        var row = units.RowOf(id);
        return units.Texts(UnitTable.Name)[row] ?? units.Codes[row]!;
    }
}
