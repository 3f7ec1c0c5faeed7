using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.People;
using Plenum.Workbench.Words;

namespace Plenum.Workbench.Questions;

/// <summary>What does somebody who takes over a package, or all packages of a person, have to know?</summary>
/// <param name="Of">Code of a package or of a person.</param>
public sealed record HandOverQuestion(string Of)
{
    /// <summary>So many packages of a person are described one by one; the list has all.</summary>
    public const int MostSheets = 60;

    /// <exception cref="QuestionException">It is neither a package nor a person.</exception>
    public HandOverAnswer Ask(Project project)
    {
        var element = project.Tree.Elements.RowOfCode(Of);
        if (element >= 0 && project.Tree.PackageOfRow[element] is var package and >= 0)
        {
            return new HandOverAnswer(null, [], Sheets(project, [package]));
        }

        var person = project[PersonTable.Definition].RowOfCode(Of);
        if (person < 0)
        {
            throw new QuestionException(
                $"\"{Of}\" is neither a package nor a person; only these have a hand-over sheet."
            );
        }

        var load = new PeopleQuestion().Ask(project).Person(Of)!;
        var list = new HandedPackagesQuestion(Person: Of).Ask(project);
        var shown = list.Where(one =>
                one.Delegation is null or { State: < DelegationTable.IsClosed }
            )
            .Take(MostSheets)
            .Select(one => project.Tree.PackageOfId(one.Id))
            .ToList();
        return new HandOverAnswer(load, list, Sheets(project, shown));
    }

    private static List<HandOverSheet> Sheets(Project project, IReadOnlyList<int> packages)
    {
        var links = new LinkWords(project, packages);
        var delegations = project[DelegationTable.Definition];
        var delegationOf = HandedPackagesQuestion.Delegations(project, delegations);
        return
        [
            .. packages.Select(package =>
            {
                var row = project.Tree.PackageRows[package];
                var id = project.Tree.Elements.Ids[row];
                var account = project.Placement.AccountOfPackage[package];
                return new HandOverSheet(
                    new DictionaryQuestion(project.Tree.Code(row)).Ask(project),
                    account < 0 ? null : ManagerOf(project, account),
                    CostElementsOf(project, package),
                    links.Before(package),
                    links.After(package),
                    Interfaces(project, row),
                    delegationOf.TryGetValue(id, out var delegated)
                        ? HandedPackagesQuestion.StateOf(project, delegations, delegated)
                        : null
                );
            }),
        ];
    }

    private static string ManagerOf(Project project, int account)
    {
        var manager = project.Placement.Accounts.Ints(AccountTable.Manager)[account];
        return PersonNames.Of(project, manager);
    }

    private static List<HandedCost> CostElementsOf(Project project, int package)
    {
        var budget = project[BudgetTable.Definition];
        var packages = budget.Ints(BudgetTable.Package);
        var id = project.Tree.Elements.Ids[project.Tree.PackageRows[package]];
        List<HandedCost> costs = [];
        for (var row = 0; row < packages.Length; row++)
        {
            if (packages[row] == id)
            {
                var hours = budget.Longs(BudgetTable.Hours)[row];
                costs.Add(
                    new HandedCost(
                        CostElements.Words.Words[budget.Ints(BudgetTable.CostElement)[row]],
                        project.Settings.Currency.ToMajorUnits(
                            budget.Longs(BudgetTable.Converted)[row]
                        ),
                        Cell.IsGiven(hours) ? hours / 100m : null
                    )
                );
            }
        }

        return costs;
    }

    /// <summary>Interfaces that were written down on the package or on an element above it.</summary>
    private static List<HandedInterface> Interfaces(Project project, int row)
    {
        var register = project[RegisterTable.Definition];
        List<HandedInterface> found = [];
        HashSet<int> line = [];
        for (var at = row; at >= 0; at = project.Tree.Parent[at])
        {
            line.Add(project.Tree.Elements.Ids[at]);
        }

        for (var entry = 0; entry < register.Count; entry++)
        {
            if (
                RegisterTable.Kinds.Format(register.Ints(RegisterTable.Kind)[entry])
                    == "interface"
                && line.Contains(register.Ints(RegisterTable.Element)[entry])
            )
            {
                found.Add(
                    new HandedInterface(
                        register.Codes[entry]!,
                        register.Texts(RegisterTable.Text)[entry]!,
                        register.Texts(RegisterTable.Giver)[entry],
                        register.Texts(RegisterTable.Receiver)[entry],
                        ProjectText.Date(register, entry, RegisterTable.NeedBy),
                        ProjectText.Date(register, entry, RegisterTable.Promised)
                    )
                );
            }
        }

        return found;
    }

    /// <summary>The links of some packages to others, in words.</summary>
    private sealed class LinkWords
    {
        private readonly Project project;
        private readonly Dictionary<int, List<HandedLink>> before = [];
        private readonly Dictionary<int, List<HandedLink>> after = [];

        public LinkWords(Project project, IReadOnlyList<int> packages)
        {
            this.project = project;
            HashSet<int> wanted = [.. packages];
            var links = project[LinkTable.Definition];
            for (var row = 0; row < links.Count; row++)
            {
                var (from, to) = (End(links, LinkTable.From, row), End(links, LinkTable.To, row));
                if (from == to || from < 0 || to < 0)
                {
                    continue;
                }

                if (wanted.Contains(to))
                {
                    Add(
                        before,
                        to,
                        new HandedLink(CodeOf(from), NameOf(from), Said(links, row, "this", "it"))
                    );
                }

                if (wanted.Contains(from))
                {
                    Add(
                        after,
                        from,
                        new HandedLink(CodeOf(to), NameOf(to), Said(links, row, "it", "this"))
                    );
                }
            }
        }

        public IReadOnlyList<HandedLink> Before(int package) =>
            before.GetValueOrDefault(package) ?? [];

        public IReadOnlyList<HandedLink> After(int package) =>
            after.GetValueOrDefault(package) ?? [];

        private static void Add(
            Dictionary<int, List<HandedLink>> links,
            int package,
            HandedLink link
        )
        {
            if (!links.TryGetValue(package, out var own))
            {
                links[package] = own = [];
            }

            if (!own.Contains(link))
            {
                own.Add(link);
            }
        }

        private static string Said(Table links, int row, string later, string earlier)
        {
            var lag = links.Ints(LinkTable.Lag)[row];
            var (then, first) = links.Ints(LinkTable.Type)[row] switch
            {
                1 => ("starts", "starts"),
                2 => ("finishes", "finishes"),
                3 => ("finishes", "starts"),
                _ => ("starts", "finishes"),
            };
            var when =
                !Cell.IsGiven(lag) || lag == 0 ? "after"
                : lag > 0 ? $"{Days(lag)} after"
                : $"up to {Days(-lag)} before";
            return $"{later} {then} {when} {earlier} {first}";
        }

        private static string Days(int days) =>
            days == 1 ? "1 working day" : $"{Amounts.Count(days)} working days";

        private int End(Table links, ColumnDefinition column, int row) =>
            column.DecodeReference(links.Ints(column)[row]) switch
            {
                (0, var id) => project[ActivityTable.Definition] is var activities
                && activities.RowOf(id) is var activity and >= 0
                    ? project.Tree.PackageOfId(activities.Ints(ActivityTable.Package)[activity])
                    : -1,
                (1, var id) => project.Tree.PackageOfId(id),
                _ => -1,
            };

        private string CodeOf(int package) =>
            project.Tree.Code(project.Tree.PackageRows[package]);

        private string NameOf(int package) =>
            project.Tree.Name(project.Tree.PackageRows[package]);
    }
}

/// <summary>The answer to a <see cref="HandOverQuestion"/>.</summary>
/// <param name="Person">Of whom it is; null for a single package.</param>
/// <param name="Packages">All packages of the person; none for a single package.</param>
/// <param name="Sheets">The packages one by one; of a person those that are not closed, up to a limit.</param>
public sealed record HandOverAnswer(
    PersonLoad? Person,
    IReadOnlyList<HandedPackage> Packages,
    IReadOnlyList<HandOverSheet> Sheets
);

/// <param name="Entry">What the dictionary says.</param>
/// <param name="Manager">Name of the manager of its account, who hands it over; null for none.</param>
/// <param name="Costs">Its budget by cost element.</param>
/// <param name="Before">What it waits for.</param>
/// <param name="After">What waits for it.</param>
/// <param name="Interfaces">Interfaces on it and above it.</param>
/// <param name="Delegation">How far it is delegated; null if it is not.</param>
public sealed record HandOverSheet(
    DictionaryAnswer Entry,
    string? Manager,
    IReadOnlyList<HandedCost> Costs,
    IReadOnlyList<HandedLink> Before,
    IReadOnlyList<HandedLink> After,
    IReadOnlyList<HandedInterface> Interfaces,
    DelegationState? Delegation
);

/// <param name="CostElement">Cost element.</param>
/// <param name="Amount">Budget in major units of the project's currency.</param>
/// <param name="Hours">Hours; null for none.</param>
public sealed record HandedCost(string CostElement, decimal Amount, decimal? Hours);

/// <param name="Code">Code of the other package.</param>
/// <param name="Name">Its name.</param>
/// <param name="Words">How the two are linked.</param>
public sealed record HandedLink(string Code, string Name, string Words);

/// <param name="Entry">Number in the register.</param>
/// <param name="Text">What is given.</param>
/// <param name="Giver">Who gives.</param>
/// <param name="Receiver">Who receives.</param>
/// <param name="NeedBy">When it is needed.</param>
/// <param name="Promised">When it is promised.</param>
public sealed record HandedInterface(
    string Entry,
    string Text,
    string? Giver,
    string? Receiver,
    DateOnly? NeedBy,
    DateOnly? Promised
);
