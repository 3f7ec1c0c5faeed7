using System.Globalization;
using Plenum.Core.Accounts;
using Plenum.Core.Accounts.Precision;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.Network.Audit;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Core;

/// <summary>What the rules of the audit read of one value of a project; made when it is first asked for.</summary>
internal sealed class AuditData
{
    private readonly Lazy<SplitWords> words;
    private readonly Lazy<SplitReadings> readings;
    private readonly Lazy<PartActivities> activities;
    private readonly Lazy<PackageActivityReports> activityReports;
    private readonly Lazy<(AuditedNetwork? Audited, string? WhyNot)> network;
    private readonly Lazy<HashSet<string>> people;
    private readonly Lazy<HashSet<int>> withItems;
    private readonly Lazy<int[]> lastProgress;
    private readonly Lazy<long[]> committed;
    private readonly Lazy<long> projectBudget;
    private readonly Lazy<Cut> accounts;
    private readonly Lazy<MeasureSums[]> accountSums;
    private readonly Lazy<AccountPrecision> precision;

    public AuditData(Project project)
    {
        Project = project;
        Period = project.CurrentPeriod();
        Money = new MoneyText(project.Settings.Currency).Of;
        words = new(() =>
            SplitWords.Of(project.Settings.Language, project[SplitWordTable.Definition])
        );
        readings = new(() => new SplitReadings(Tree, words.Value, UnitName, PartTypeCode));
        activities = new(() =>
            new PartActivities(
                Tree,
                project[WorkSetTable.Definition],
                project[NotNeededTable.Definition]
            )
        );
        activityReports = new(() =>
            new PackageActivityReports(
                Baseline,
                project.Periods,
                project[ActivityTable.Definition],
                project[ActivityStatusTable.Definition]
            )
        );
        network = new(FindNetwork);
        people = new(() => NamesOf(project[PersonTable.Definition]));
        withItems = new(() =>
            [.. Baseline.OwnersOf(project[ItemTable.Definition], ItemTable.Package)]
        );
        lastProgress = new(FindLastProgress);
        committed = new(() => project.TimePhased.CommittedAt(Period));
        projectBudget = new(() => project.Totals.Budget[0]);
        accounts = new(() => project.CutsUnder(-1).ByAccount());
        accountSums = new(() => SumsOf(accounts.Value));
        precision = new(() =>
            new AccountPrecision(
                project.TimePhased,
                project.OpenShares,
                Accounts,
                project.Settings.VarianceThreshold
            )
        );
    }

    public Project Project { get; }

    /// <summary>The period at whose end the audit is taken; −1 before the first.</summary>
    public int Period { get; }

    /// <summary>An amount in minor units as text.</summary>
    public Func<long, string> Money { get; }

    public ElementTree Tree => Project.Tree;

    public PackageBaseline Baseline => Project.Baseline;

    public AuditThresholds Thresholds => Project.Settings.Audit;

    public SplitReadings Readings => readings.Value;

    public NameCheck Names => new(words.Value);

    public ScopeCoverage Coverage => Project.ScopeCoverage;

    public PartActivities Activities => activities.Value;

    public PackageActivityReports ActivityReports => activityReports.Value;

    public PackageLinks Links => Project.Links;

    /// <summary>The network; or, where there are activities or links and it cannot be computed, why not.</summary>
    public (AuditedNetwork? Audited, string? WhyNot) Network => network.Value;

    public Cut Accounts => accounts.Value;

    public MeasureSums[] AccountSums() => accountSums.Value;

    /// <summary>Measures of one package.</summary>
    public MeasureSums SumsOf(int package) =>
        CutMeasures.OfPackage(Project.TimePhased, package, Period, committed.Value);

    public PeriodSeries ActualCost() => Project.ActualCost.Packages;

    public PeriodSeries EarnedValue() => Project.EarnedValue;

    /// <summary>Verdicts on an account, by its row of the cut, in the present period and all later ones.</summary>
    public IEnumerable<PrecisionVerdict> Verdicts(int account)
    {
        for (var period = Math.Max(0, Period); period < Project.Periods.Count; period++)
        {
            yield return precision.Value.At(account, period);
        }
    }

    public string PackageName(int package) =>
        Baseline.Code(package) + " " + Tree.Name(Tree.PackageRows[package]);

    public long[] Committed() => committed.Value;

    public long ProjectBudget() => projectBudget.Value;

    public bool IsPerson(string name) => people.Value.Contains(name);

    public bool HasItems(int package) => withItems.Value.Contains(package);

    /// <summary>The last period in which a milestone or a step of a package was reported; −1 for none.</summary>
    public int LastProgress(int package) => lastProgress.Value[package];

    public static string Hours(long hundredths) =>
        (hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture) + " h";

    private (AuditedNetwork?, string?) FindNetwork()
    {
        try
        {
            return (ProjectAssessment.Of(Project, Project.Network), null);
        }
        catch (NetworkException wrong)
        {
            var isAsked =
                Project[ActivityTable.Definition].Count > 0
                || Project[LinkTable.Definition].Count > 0;
            return (null, isAsked ? wrong.Message : null);
        }
    }

    private MeasureSums[] SumsOf(Cut cut) =>
        CutMeasures.At(Project.TimePhased, cut, Period, false).Rows;

    private string? UnitName(int id)
    {
        var units = Project[UnitTable.Definition];
        return units.RowOf(id) is var row and >= 0 ? units.Texts(UnitTable.Name)[row] : null;
    }

    private string PartTypeCode(int id)
    {
        var types = Project[PartTypeTable.Definition];
        return types.Codes[types.RowOf(id)]!;
    }

    private static HashSet<string> NamesOf(Table people) =>
        people
            .Texts(PersonTable.Name)
            .ToArray()
            .OfType<string>()
            .ToHashSet(StringComparer.OrdinalIgnoreCase);

    private int[] FindLastProgress()
    {
        var last = new int[Baseline.Count];
        last.AsSpan().Fill(-1);
        Note(
            Project[MilestoneStatusTable.Definition],
            MilestoneStatusTable.Package,
            MilestoneStatusTable.Period
        );
        Note(Project[ItemStepTable.Definition], ItemStepTable.Package, ItemStepTable.Period);
        return last;

        void Note(Table table, ColumnDefinition owner, ColumnDefinition column)
        {
            var owners = Baseline.OwnersOf(table, owner);
            var periods = PackageStatus.PeriodsOf(table, column, Project.Periods);
            for (var row = 0; row < owners.Length; row++)
            {
                if (owners[row] >= 0 && periods[row] <= Period)
                {
                    last[owners[row]] = Math.Max(last[owners[row]], periods[row]);
                }
            }
        }
    }
}
