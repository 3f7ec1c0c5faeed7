using Plenum.Core;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;

namespace Plenum.Workbench.Questions;

/// <summary>Which units and people are there, to be edited?</summary>
public static class OrganisationQuestion
{
    public static OrganisationAnswer Ask(Project project)
    {
        var units = project[UnitTable.Definition];
        var people = project[PersonTable.Definition];
        var parents = ParentRules.ParentRows(units, UnitTable.Parent);
        var count = new int[units.Count];
        foreach (var unit in people.Ints(PersonTable.Unit))
        {
            if (unit != Cell.NoInt)
            {
                count[units.RowOf(unit)]++;
            }
        }

        return new OrganisationAnswer(
            [
                .. DepthFirstOrder
                    .Of(parents, [], units.Codes)
                    .Select(row => new OrganisationUnit(
                        units.Ids[row],
                        units.Codes[row]!,
                        units.Texts(UnitTable.Name)[row],
                        parents[row] < 0 ? 0 : units.Ids[parents[row]],
                        Depth(parents, row),
                        count[row]
                    )),
            ],
            [
                .. Enumerable
                    .Range(0, people.Count)
                    .Select(row => new OrganisationPerson(
                        people.Ids[row],
                        people.Codes[row]!,
                        people.Texts(PersonTable.Name)[row],
                        people.Ints(PersonTable.Unit)[row] is var unit && unit != Cell.NoInt
                            ? units.Codes[units.RowOf(unit)]
                            : null,
                        people.Texts(PersonTable.Email)[row]
                    ))
                    .OrderBy(person => person.Code, NaturalOrder.Codes),
            ]
        );
    }

    private static int Depth(int[] parents, int row)
    {
        var depth = 0;
        for (var at = parents[row]; at >= 0; at = parents[at])
        {
            depth++;
        }

        return depth;
    }
}

/// <param name="Units">Each unit under the one that it belongs to.</param>
/// <param name="People">Everybody, by code.</param>
public sealed record OrganisationAnswer(
    IReadOnlyList<OrganisationUnit> Units,
    IReadOnlyList<OrganisationPerson> People
);

/// <param name="Id">Id of the unit.</param>
/// <param name="Code">Code.</param>
/// <param name="Name">Name; null for none.</param>
/// <param name="ParentId">Id of the unit that it belongs to; 0 for none.</param>
/// <param name="Depth">0 for one that belongs to none.</param>
/// <param name="People">How many people belong to it.</param>
public sealed record OrganisationUnit(
    int Id,
    string Code,
    string? Name,
    int ParentId,
    int Depth,
    int People
);

/// <param name="Id">Id of the person.</param>
/// <param name="Code">Code.</param>
/// <param name="Name">Name; null for none.</param>
/// <param name="Unit">Code of the unit; null for none.</param>
/// <param name="Email">Address; null for none.</param>
public sealed record OrganisationPerson(
    int Id,
    string Code,
    string? Name,
    string? Unit,
    string? Email
);
