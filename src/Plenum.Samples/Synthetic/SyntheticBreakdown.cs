using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Synthetic;

/// <summary>elements, accounts, not_needed: written account by account, each level where it begins.</summary>
internal sealed class SyntheticBreakdown
{
    private readonly SyntheticTree _tree;
    private readonly SyntheticPeople _people;
    private readonly TableWriter _elements;
    private readonly TableWriter _accounts;
    private readonly TableWriter _notNeeded;
    private readonly long[] _subsystems;
    private readonly long[] _systems;
    private readonly long[] _areas;
    private int _lastSubsystem = -1;
    private int _lastSystem = -1;
    private int _lastArea = -1;

    public SyntheticBreakdown(
        SyntheticTree tree,
        SyntheticPeople people,
        long[] budgets,
        TableFolder tables
    )
    {
        _tree = tree;
        _people = people;
        _subsystems = new long[tree.Subsystems];
        _systems = new long[tree.Systems];
        _areas = new long[tree.Areas];
        for (var account = 0; account < budgets.Length; account++)
        {
            var subsystem = SyntheticTree.SubsystemOf(account);
            var system = SyntheticTree.SystemOf(subsystem);
            _subsystems[subsystem] += budgets[account];
            _systems[system] += budgets[account];
            _areas[SyntheticTree.AreaOf(system)] += budgets[account];
        }
        _elements = tables.Open(
            "elements",
            "code",
            "parent",
            "order",
            "name",
            "kind",
            "split",
            "part_type",
            "activity",
            "person",
            "unit",
            "output",
            "acceptance",
            "quantity",
            "quantity_unit",
            "hazards",
            "allotted"
        );
        _accounts = tables.Open("accounts", "account", "element", "unit", "manager", "name");
        _notNeeded = tables.Open("not_needed", "element", "activity", "reason");
        WriteBranch(
            SyntheticFrame.RootCode,
            "",
            1,
            "Synthetic plant",
            "project",
            "place",
            budgets.Sum()
        );
    }

    /// <summary>The codes of the account's parts, after <see cref="Write"/>.</summary>
    public List<string> PartCodes { get; } = [];

    public static string AccountCode(SyntheticTree tree, int account) =>
        $"{tree.SubsystemCode(SyntheticTree.SubsystemOf(account))}-{SyntheticPeople.UnitOf(account)}";

    public static string SubsystemName(int subsystem) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{SystemName(SyntheticTree.SystemOf(subsystem))}, line {(subsystem % SyntheticTree.SubsystemsPerSystem) + 1}"
        );

    public void Write(int account, ReadOnlySpan<SyntheticPackage> packages)
    {
        var subsystem = SyntheticTree.SubsystemOf(account);
        WriteBranches(subsystem);
        var parent = _tree.SubsystemCode(subsystem);
        _accounts
            .Text(AccountCode(_tree, account))
            .Text(parent)
            .Text(SyntheticPeople.UnitOf(account))
            .Text(_people.ManagerOf(account))
            .Text(SubsystemName(subsystem))
            .EndRow();
        PartCodes.Clear();
        var place = _tree.PartsBefore(account);
        for (var first = 0; first < packages.Length; first += SyntheticTree.PackagesPerPart)
        {
            var count = Math.Min(SyntheticTree.PackagesPerPart, packages.Length - first);
            WritePart(account, parent, place++, packages.Slice(first, count));
        }
    }

    private static string SystemName(int system)
    {
        var name = SyntheticWords.Systems[system % SyntheticWords.Systems.Length];
        var round = system / SyntheticWords.Systems.Length;
        return round == 0
            ? name
            : string.Create(CultureInfo.InvariantCulture, $"{name} {round + 1}");
    }

    private static string AreaName(int area)
    {
        var name = SyntheticWords.Areas[area % SyntheticWords.Areas.Length];
        var round = area / SyntheticWords.Areas.Length;
        return round == 0
            ? name
            : string.Create(CultureInfo.InvariantCulture, $"{name} {round + 1}");
    }

    private void WriteBranches(int subsystem)
    {
        var system = SyntheticTree.SystemOf(subsystem);
        var area = SyntheticTree.AreaOf(system);
        if (_tree.HasAreas && area != _lastArea)
        {
            var code = SyntheticTree.AreaCode(area);
            WriteBranch(
                code,
                SyntheticFrame.RootCode,
                area + 1,
                AreaName(area),
                "branch",
                "function",
                _areas[area]
            );
        }
        if (_tree.HasSystems && system != _lastSystem)
        {
            var parent = _tree.HasAreas ? SyntheticTree.AreaCode(area) : SyntheticFrame.RootCode;
            var code = _tree.SystemCode(system);
            WriteBranch(
                code,
                parent,
                system + 1,
                SystemName(system),
                "branch",
                "place",
                _systems[system]
            );
        }
        if (subsystem != _lastSubsystem)
        {
            var parent = _tree.HasSystems ? _tree.SystemCode(system) : SyntheticFrame.RootCode;
            var code = _tree.SubsystemCode(subsystem);
            WriteBranch(
                code,
                parent,
                subsystem + 1,
                SubsystemName(subsystem),
                "branch",
                "part",
                _subsystems[subsystem]
            );
        }
        (_lastArea, _lastSystem, _lastSubsystem) = (area, system, subsystem);
    }

    private void WriteBranch(
        string code,
        string parent,
        int order,
        string name,
        string kind,
        string split,
        long allotted
    ) =>
        _elements
            .Text(code)
            .Text(parent)
            .Whole(order)
            .Text(name)
            .Text(kind)
            .Text(split)
            .Empty()
            .Empty()
            .Empty()
            .Empty()
            .Text(name + ", complete")
            .Text("All its parts accepted")
            .Empty()
            .Empty()
            .Empty()
            .Hundredths(allotted)
            .EndRow();

    private void WritePart(
        int account,
        string parent,
        int place,
        ReadOnlySpan<SyntheticPackage> packages
    )
    {
        var code = SyntheticTree.PartCode(parent, place);
        PartCodes.Add(code);
        var (type, kind) = SyntheticWords.Parts[place % SyntheticWords.Parts.Length];
        var name = string.Create(
            CultureInfo.InvariantCulture,
            $"{kind} {(place / SyntheticWords.Parts.Length) + 1}"
        );
        _elements
            .Text(code)
            .Text(parent)
            .Whole(place + 1)
            .Text(name)
            .Text("branch")
            .Text("phase")
            .Text(type)
            .Empty()
            .Text(_people.ManagerOf(account))
            .Text(SyntheticPeople.UnitOf(account))
            .Text(name + ", handed over")
            .Text("Runs at its rated point")
            .Empty()
            .Empty()
            .Empty()
            .Empty()
            .EndRow();
        for (var step = 0; step < packages.Length; step++)
        {
            WritePackage(code, name, step, packages[step]);
        }
        for (var step = packages.Length; step < SyntheticWords.Steps.Length; step++)
        {
            _notNeeded
                .Text(code)
                .Text(SyntheticWords.Steps[step].Name)
                .Text("done with the next part")
                .EndRow();
        }
    }

    private void WritePackage(string part, string name, int step, SyntheticPackage package)
    {
        var kind = package.Kind;
        var isCounted = package.Technique == "units";
        _elements
            .Text(SyntheticTree.PartCode(part, step))
            .Text(part)
            .Whole(step + 1)
            .Text($"{name}, {char.ToLowerInvariant(kind.Name[0])}{kind.Name[1..]}")
            .Text("work_package")
            .Empty()
            .Empty()
            .Text(kind.Name)
            .Empty()
            .Empty()
            .Text(kind.Name + " done")
            .Text("Record signed")
            .WholeOrEmpty(isCounted ? package.Quantity : null)
            .Text(isCounted ? "pieces" : "")
            .Text(step is SyntheticWords.Erection ? "lifting" : "")
            .Empty()
            .EndRow();
    }
}
