using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.Scope;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>What does the WBS dictionary say of an element, and what belongs to it elsewhere?</summary>
/// <param name="Code">The element's code.</param>
public sealed record DictionaryQuestion(string Code)
{
    /// <exception cref="QuestionException">No element has the code.</exception>
    public DictionaryAnswer Ask(Project project)
    {
        var row = ElementPosition.Of(project, Code);
        var tree = project.Tree;
        var text = new ProjectText(project);
        var parent = tree.Parent[row];
        var sizes = ElementSizes.Of(project);
        var package = tree.PackageOfRow[row];
        return new DictionaryAnswer(Code, tree.Name(row), tree.Kind(row), tree.Level[row])
        {
            Parent = parent < 0 ? null : new NamedCode(tree.Code(parent), tree.Name(parent)),
            Description = Said(ElementTable.Description),
            Included = Said(ElementTable.Included),
            Excluded = Said(ElementTable.Excluded),
            Output = Said(ElementTable.Output),
            Acceptance = Said(ElementTable.Acceptance),
            Assumptions = Said(ElementTable.Assumptions),
            Quantity = text.Number(tree.Elements, row, ElementTable.Quantity),
            QuantityUnit = Said(ElementTable.QuantityUnit),
            Hazards = Said(ElementTable.Hazards) is { } hazards
                ? hazards.Split(
                    ';',
                    StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                )
                : [],
            PartType = Reference(project, row, ElementTable.PartType, PartTypeTable.Name),
            Activity = Said(ElementTable.Activity),
            Split = tree.HasChildren(row) ? Said(ElementTable.Split) : null,
            Parts = sizes.Parts[row],
            Scope = [.. ScopeOf(project, tree.Elements.Ids[row])],
            Person = PersonOf(project, row),
            Unit = UnitOf(project, row),
            Accounts = AccountsOf(project, row),
            Packages = PackagesOf(project, row).Count(),
            PackagesWithoutAccount = PackagesOf(project, row)
                .Count(number => project.Placement.AccountOfPackage[number] < 0),
            PackagesWithoutPerson = PackagesOf(project, row)
                .Count(number => sizes.Person[tree.PackageRows[number]] == Cell.NoInt),
            Technique =
                package >= 0 && project.Baseline.Technique[package] != Cell.NoInt
                    ? TechniqueCodec.Instance.Format(project.Baseline.Technique[package])
                    : null,
            Start = package < 0 ? null : Day(project.Baseline.Start[package]),
            Finish = package < 0 ? null : Day(project.Baseline.Finish[package]),
            Register = [.. RegisterOf(project, row)],
            Allotted = Money(project, project.Totals.Allotted[row]),
            Budget = project.Settings.Currency.ToMajorUnits(project.Totals.Budget[row]),
            Gap = Money(project, project.Totals.Gap[row]),
            GapShare = Cell.IsGiven(project.Totals.Gap[row])
                ? Ratio.Of(Math.Abs(project.Totals.Gap[row]), project.Totals.Allotted[row])
                : null,
            Hours = project.HourTotals.Budget[row] / 100m,
            ShareOfProject = sizes.ShareOfProject(row),
        };

        string? Said(ColumnDefinition column) => tree.Elements.Texts(column)[row];
    }

    private static IEnumerable<TracedItem> ScopeOf(Project project, int element)
    {
        var trace = project[TraceTable.Definition];
        var scope = project[ScopeTable.Definition];
        List<(int Item, string? Phrase)> found = [];
        for (var row = 0; row < trace.Count; row++)
        {
            if (trace.Ints(TraceTable.Element)[row] == element)
            {
                found.Add(
                    (
                        scope.RowOf(trace.Ints(TraceTable.Item)[row]),
                        trace.Texts(TraceTable.Phrase)[row]
                    )
                );
            }
        }

        return found
            .OrderBy(pair => scope.Codes[pair.Item], NaturalOrder.Codes)
            .Select(pair => new TracedItem(
                scope.Codes[pair.Item]!,
                ScopeTable.Kinds.Format(scope.Ints(ScopeTable.Kind)[pair.Item]),
                scope.Texts(ScopeTable.Text)[pair.Item]!,
                pair.Phrase is { Length: > 0 } phrase ? phrase : null
            ));
    }

    private static InheritedName? PersonOf(Project project, int row)
    {
        var at = NearestWith(project, row, ElementTable.Person);
        if (at < 0)
        {
            return null;
        }

        var people = project[PersonTable.Definition];
        var person = people.RowOf(project.Tree.Elements.Ints(ElementTable.Person)[at]);
        return new InheritedName(
            people.Codes[person]!,
            PersonNames.Of(project, people.Ids[person]),
            at == row ? null : project.Tree.Code(at)
        );
    }

    private static InheritedName? UnitOf(Project project, int row)
    {
        var at = NearestWith(project, row, ElementTable.Unit);
        if (at < 0)
        {
            return null;
        }

        var units = project[UnitTable.Definition];
        var unit = units.RowOf(project.Tree.Elements.Ints(ElementTable.Unit)[at]);
        return new InheritedName(
            units.Codes[unit]!,
            units.Texts(UnitTable.Name)[unit] ?? units.Codes[unit]!,
            at == row ? null : project.Tree.Code(at)
        );
    }

    /// <summary>The element itself or the nearest above that has a value; −1 for none.</summary>
    private static int NearestWith(Project project, int row, ColumnDefinition column)
    {
        var values = project.Tree.Elements.Ints(column);
        while (row >= 0 && values[row] == Cell.NoInt)
        {
            row = project.Tree.Parent[row];
        }

        return row;
    }

    /// <summary>The accounts in which its packages are, in the order of the packages.</summary>
    private static List<NamedCode> AccountsOf(Project project, int row)
    {
        List<NamedCode> accounts = [];
        var known = new bool[project.Placement.Accounts.Count];
        foreach (var package in PackagesOf(project, row))
        {
            if (
                project.Placement.AccountOfPackage[package] is var account and >= 0
                && !known[account]
            )
            {
                known[account] = true;
                accounts.Add(
                    new NamedCode(
                        project.Placement.Accounts.Codes[account]!,
                        project.Placement.Accounts.Texts(AccountTable.Name)[account] ?? ""
                    )
                );
            }
        }

        return accounts;
    }

    /// <summary>The packages at or below an element, by number.</summary>
    private static IEnumerable<int> PackagesOf(Project project, int row)
    {
        for (
            var package = FirstPackage(project, row);
            package < project.Tree.PackageCount
                && project.Tree.PackageRows[package] < project.Tree.SubtreeEnd[row];
            package++
        )
        {
            yield return package;
        }
    }

    /// <summary>The first package at or after a position.</summary>
    private static int FirstPackage(Project project, int row)
    {
        var at = project.Tree.PackageRows.BinarySearch(row);
        return at < 0 ? ~at : at;
    }

    private static IEnumerable<RegisterLine> RegisterOf(Project project, int row)
    {
        var register = project[RegisterTable.Definition];
        var text = new ProjectText(project);
        for (var entry = 0; entry < register.Count; entry++)
        {
            if (register.Ints(RegisterTable.Element)[entry] == project.Tree.Elements.Ids[row])
            {
                yield return new RegisterLine(
                    register.Codes[entry]!,
                    RegisterTable.Kinds.Format(register.Ints(RegisterTable.Kind)[entry]),
                    register.Texts(RegisterTable.Text)[entry]!,
                    OwnerName(project, register.Texts(RegisterTable.Owner)[entry]),
                    text.Number(register, entry, RegisterTable.Likely),
                    text.Number(register, entry, RegisterTable.DaysLikely),
                    register.Texts(RegisterTable.Giver)[entry],
                    register.Texts(RegisterTable.Receiver)[entry],
                    ProjectText.Date(register, entry, RegisterTable.NeedBy),
                    ProjectText.Date(register, entry, RegisterTable.Promised)
                );
            }
        }
    }

    /// <summary>An owner who is a person of the project by name, else as it was written.</summary>
    private static string? OwnerName(Project project, string? owner)
    {
        var people = project[PersonTable.Definition];
        return owner is not null && people.RowOfCode(owner) is var row and >= 0
            ? PersonNames.Of(project, people.Ids[row])
            : owner;
    }

    private static NamedCode? Reference(
        Project project,
        int row,
        ColumnDefinition column,
        ColumnDefinition name
    )
    {
        var id = project.Tree.Elements.Ints(column)[row];
        if (id == Cell.NoInt)
        {
            return null;
        }

        var table = project[ProjectLayout.Target(column, 0)];
        var target = table.RowOf(id);
        return new NamedCode(
            table.Codes[target]!,
            table.Texts(name)[target] ?? table.Codes[target]!
        );
    }

    private static decimal? Money(Project project, long minorUnits) =>
        Cell.IsGiven(minorUnits) ? project.Settings.Currency.ToMajorUnits(minorUnits) : null;

    private static DateOnly? Day(int day) => Cell.IsGiven(day) ? DateOnly.FromDayNumber(day) : null;
}
