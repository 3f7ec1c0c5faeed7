using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Synthetic;

/// <summary>The tables that do not grow with the packages.</summary>
internal sealed class SyntheticFrame(SyntheticTree tree, SyntheticPeople people, ulong seed)
{
    public const string RootCode = "ROOT";
    public const string Grouping = "construction area";
    public const int Groups = 24;

    public static readonly (string Rule, (string Step, int Percent)[] Steps)[] CreditRules =
    [
        ("drawing", [("drafted", 50), ("checked", 30), ("issued", 20)]),
        ("set", [("placed", 40), ("joined", 40), ("tested", 20)]),
    ];

    private const long Reserve = 5_000_000_00;

    public void Write(TableFolder tables, long[] budgets)
    {
        WriteProject(tables);
        WritePeople(tables);
        WriteWorkSets(tables);
        SyntheticScope.Write(tables, tree);
        // its packages are not handed over one by one
        tables.Open("delegations", "package", "person", "state", "offered");
        WriteRegister(tables);
        WriteGroups(tables);
        WritePostings(tables, budgets);
        var rules = tables.Open("credit_steps", "rule", "step", "percent", "order");
        foreach (var (rule, steps) in CreditRules)
        {
            for (var i = 0; i < steps.Length; i++)
            {
                rules.Text(rule).Text(steps[i].Step).Whole(steps[i].Percent).Whole(i + 1).EndRow();
            }
        }
    }

    public static string GroupCode(int group) =>
        string.Create(CultureInfo.InvariantCulture, $"A{group + 1:00}");

    private void WriteProject(TableFolder tables)
    {
        var project = tables.Open("project", "key", "value");
        project.Text("code").Text("SYN").EndRow();
        project.Text("name").Text(RootName()).EndRow();
        project.Text("currency").Text("EUR").EndRow();
        project.Text("start").Date(SyntheticTime.Start).EndRow();
        project.Text("status_date").Date(SyntheticTime.End(SyntheticTime.Closed - 1)).EndRow();
        project.Text("calendar").Text("site").EndRow();
        project.Text("variance_threshold").Text("10").EndRow();
        project.Text("accruals").Text("reversed").EndRow();
        project.Text("progress").Text("logic_holds").EndRow();
        project
            .Text("level_names")
            .Text("Project; Area; Unit; System; Part; Work package")
            .EndRow();
        project
            .Text("code_mask")
            .Text(
                tree.HasAreas ? "0.0.0.00.00"
                : tree.HasSystems ? "0.0.00.00"
                : "0.00.00"
            )
            .EndRow();
        var calendars = tables.Open("calendars", "calendar", "working", "name");
        calendars.Text("site").Text("1111100").Text("Site").EndRow();
        var days = tables.Open("calendar_days", "calendar", "date", "working", "note");
        foreach (var (date, _) in SyntheticTime.Holidays)
        {
            days.Text("site").Date(date).Whole(0).Text("Holiday").EndRow();
        }
        var periods = tables.Open("periods", "period", "end");
        for (var period = 0; period < SyntheticTime.Periods; period++)
        {
            periods.Text(SyntheticTime.Names[period]).Date(SyntheticTime.End(period)).EndRow();
        }
    }

    public string RootName() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Synthetic plant of {tree.Packages} packages, seed {seed}"
        );

    private void WritePeople(TableFolder tables)
    {
        var units = tables.Open("units", "unit", "name", "parent");
        foreach (var (code, name, parent) in SyntheticWords.Units)
        {
            units.Text(code).Text(name).Text(parent).EndRow();
        }
        var table = tables.Open("people", "person", "name", "unit", "email");
        for (var person = 0; person < people.Count; person++)
        {
            var code = SyntheticPeople.Code(person);
            table
                .Text(code)
                .Text(SyntheticPeople.NameOf(person))
                .Text(SyntheticPeople.UnitOfPerson(person))
                .Text(code + "@synthetic.example")
                .EndRow();
        }
    }

    private static void WriteWorkSets(TableFolder tables)
    {
        var types = tables.Open("part_types", "part_type", "name");
        var sets = tables.Open(
            "work_sets",
            "part_type",
            "activity",
            "facet",
            "order",
            "share",
            "duration",
            "after"
        );
        foreach (var (type, name) in SyntheticWords.Parts)
        {
            types.Text(type).Text(name).EndRow();
            for (var step = 0; step < SyntheticWords.Steps.Length; step++)
            {
                var kind = SyntheticWords.Steps[step];
                var (first, second) = SyntheticAccount.Before(step);
                var after = first < 0 ? "" : SyntheticWords.Steps[first].Name;
                sets.Text(type)
                    .Text(kind.Name)
                    .Text(kind.Facet)
                    .Whole(step + 1)
                    .Hundredths(kind.Share * 10)
                    .Whole(Math.Max(1, (kind.Shortest + kind.Longest) / 2))
                    .Text(second < 0 ? after : $"{after};{SyntheticWords.Steps[second].Name}")
                    .EndRow();
            }
        }
    }

    private void WriteRegister(TableFolder tables)
    {
        var register = tables.Open(
            "register",
            "entry",
            "element",
            "kind",
            "text",
            "owner",
            "low",
            "likely",
            "high",
            "days_low",
            "days_likely",
            "days_high"
        );
        var random = new SeededRandom(seed, "register");
        for (var account = 0; account < tree.Accounts; account++)
        {
            var isRisk = account % 4 != 3;
            var likely = random.Between(10, 400) * 1000L;
            register
                .Text(string.Create(CultureInfo.InvariantCulture, $"R-{account + 1:0000}"))
                .Text(tree.SubsystemCode(SyntheticTree.SubsystemOf(account)))
                .Text(isRisk ? "risk" : "opportunity")
                .Text(isRisk ? "Delivery later than promised" : "Two parts tested in one campaign")
                .Text(people.ManagerOf(account))
                .Hundredths(likely / 3)
                .Hundredths(likely)
                .Hundredths(likely * 3)
                .Whole(random.Between(0, 3))
                .Whole(random.Between(4, 10))
                .Whole(random.Between(12, 40))
                .EndRow();
        }
    }

    private static void WriteGroups(TableFolder tables)
    {
        var groups = tables.Open("groups", "grouping", "group", "name", "parent");
        groups.Text(Grouping).Text("ALL").Text("Whole site").Empty().EndRow();
        for (var group = 0; group < Groups; group++)
        {
            var name = $"Area {GroupCode(group)}";
            groups.Text(Grouping).Text(GroupCode(group)).Text(name).Text("ALL").EndRow();
        }
    }

    private void WritePostings(TableFolder tables, long[] budgets)
    {
        var changes = tables.Open(
            "changes",
            "change",
            "title",
            "reason",
            "state",
            "decided_on",
            "decided_by"
        );
        var person = SyntheticPeople.Code(0);
        var day = SyntheticTime.Start;
        changes
            .Text("C-000")
            .Text("Contract award")
            .Text("Contract signed")
            .Text("implemented")
            .Date(day)
            .Text(person)
            .EndRow();
        changes
            .Text("C-001")
            .Text("Baseline")
            .Text("Budget distributed")
            .Text("implemented")
            .Date(day.AddDays(14))
            .Text(person)
            .EndRow();
        var postings = tables.Open("postings", "change", "posting", "from", "to", "amount");
        postings
            .Text("C-000")
            .Text("1")
            .Text("contract")
            .Text("undistributed")
            .Hundredths(budgets.Sum())
            .EndRow();
        postings
            .Text("C-000")
            .Text("2")
            .Text("contract")
            .Text("reserve")
            .Hundredths(Reserve)
            .EndRow();
        for (var account = 0; account < budgets.Length; account++)
        {
            postings
                .Text("C-001")
                .Text((account + 3).ToString(CultureInfo.InvariantCulture))
                .Text("undistributed")
                .Text(SyntheticBreakdown.AccountCode(tree, account))
                .Hundredths(budgets[account])
                .EndRow();
        }
    }
}
