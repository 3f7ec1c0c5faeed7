using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Foundation.Time;
using Plenum.Core.People;
using Plenum.Core.Status;

namespace Plenum.Bench.Data;

/// <summary>
/// A project drawn from a seed: one root, a branch for each control account, packages below them in equal numbers.
/// Baseline dates are Mondays to Fridays, from four weeks to two years apart, monthly periods from January 2020.
/// </summary>
internal sealed class PackageProject
{
    public static readonly DateOnly ProjectStart = new(2020, 1, 1);

    private readonly Draw draw;

    public PackageProject(int packages, int accounts, int periods, ulong seed)
    {
        draw = new Draw(seed);
        Packages = packages;
        Accounts = Math.Min(accounts, packages);
        PeriodEnds = new int[periods];
        for (var period = 0; period < periods; period++)
        {
            PeriodEnds[period] = ProjectStart.AddMonths(period + 1).AddDays(-1).DayNumber;
        }

        AccountOf = new int[packages];
        Start = new int[packages];
        Finish = new int[packages];
        for (var package = 0; package < packages; package++)
        {
            AccountOf[package] = (int)((long)package * Accounts / packages);
            Start[package] = WorkDay(
                draw.Between(PeriodEnds[0] - 20, PeriodEnds[^1] - (2 * 366) - 40)
            );
            Finish[package] = WorkDay(Start[package] + draw.Between(28, 2 * 365));
        }
    }

    public int Packages { get; }

    public int Accounts { get; }

    /// <summary>Last day of each period, as a day number.</summary>
    public int[] PeriodEnds { get; }

    /// <summary>Account of each package, from 0.</summary>
    public int[] AccountOf { get; }

    /// <summary>Baseline start, as a day number.</summary>
    public int[] Start { get; }

    /// <summary>Baseline finish, as a day number.</summary>
    public int[] Finish { get; }

    public static string CodeOf(int package) =>
        string.Create(CultureInfo.InvariantCulture, $"P{package:000000}");

    public static string PeriodCode(int period) =>
        ProjectStart.AddMonths(period).ToString("yyyy-MM", CultureInfo.InvariantCulture);

    /// <summary>Id of a package's element.</summary>
    public int ElementOf(int package) => 2 + AccountOf[package] + 1 + package;

    /// <summary>A project of some tables, all others without a row.</summary>
    public static Project Of(params ReadOnlySpan<Table> tables) =>
        new(Project.Empty.With(tables.ToArray()).Tables, 1);

    /// <summary>Settings, periods, a unit, a person, breakdown and accounts.</summary>
    public Table[] Frame()
    {
        var elements = 1 + Accounts + Packages;
        var (codes, names) = (new string?[elements], new string?[elements]);
        var (parents, order) = (new int[elements], new int[elements]);
        codes[0] = "1";
        names[0] = "Project";
        parents[0] = Cell.NoInt;
        order[0] = Cell.NoInt;
        var branches = new int[Accounts];
        var at = 1;
        for (var package = 0; package < Packages; package++)
        {
            var account = AccountOf[package];
            if (package == 0 || AccountOf[package - 1] != account)
            {
                branches[account] = at + 1;
                codes[at] = string.Create(CultureInfo.InvariantCulture, $"1.{account + 1}");
                names[at] = string.Create(CultureInfo.InvariantCulture, $"Branch {account + 1}");
                parents[at] = 1;
                order[at] = account + 1;
                at++;
            }

            codes[at] = CodeOf(package);
            names[at] = string.Create(CultureInfo.InvariantCulture, $"Work package {package + 1}");
            parents[at] = branches[account];
            order[at] = package + 1;
            at++;
        }

        return
        [
            Tables.Of(
                ProjectTable.Definition,
                3,
                (ProjectTable.Key, Tables.Of(["currency", "start", "status_date"])),
                (ProjectTable.Value, Tables.Of(["EUR", Text(ProjectStart), StatusDate()]))
            ),
            Tables.Of(
                PeriodTable.Definition,
                PeriodEnds.Length,
                (
                    PeriodTable.Period,
                    Tables.Of([.. Enumerable.Range(0, PeriodEnds.Length).Select(PeriodCode)])
                ),
                (PeriodTable.End, Tables.Of(PeriodEnds))
            ),
            Tables.Of(
                UnitTable.Definition,
                1,
                (UnitTable.Unit, Tables.Of(["U1"])),
                (UnitTable.Name, Tables.Of(["Unit"]))
            ),
            Tables.Of(
                PersonTable.Definition,
                1,
                (PersonTable.Person, Tables.Of(["M1"])),
                (PersonTable.Name, Tables.Of(["Manager"]))
            ),
            Tables.Of(
                ElementTable.Definition,
                elements,
                (ElementTable.Code, Tables.Of(codes)),
                (ElementTable.Parent, Tables.Of(parents)),
                (ElementTable.Order, Tables.Of(order)),
                (ElementTable.Name, Tables.Of(names))
            ),
            Tables.Of(
                AccountTable.Definition,
                Accounts,
                (
                    AccountTable.Account,
                    Tables.Of([.. Enumerable.Range(0, Accounts).Select(AccountCode)])
                ),
                (AccountTable.Element, Tables.Of(branches)),
                (AccountTable.Unit, Tables.Of([.. Enumerable.Repeat(1, Accounts)])),
                (AccountTable.Manager, Tables.Of([.. Enumerable.Repeat(1, Accounts)]))
            ),
        ];
    }

    /// <summary>Baseline dates of every package.</summary>
    /// <param name="technique">Technique of a package.</param>
    /// <param name="spread">Spread of a package.</param>
    public Table PackageRows(Func<int, int> technique, Func<int, int> spread) =>
        Tables.Of(
            PackageTable.Definition,
            Packages,
            (PackageTable.Package, Tables.Of(Each(ElementOf))),
            (PackageTable.Technique, Tables.Of(Each(technique))),
            (PackageTable.Spread, Tables.Of(Each(spread))),
            (PackageTable.Start, Tables.Of(Start)),
            (PackageTable.Finish, Tables.Of(Finish))
        );

    /// <summary>From one to so many cost elements with a budget for each package.</summary>
    public Table BudgetRows(int mostCostElements)
    {
        List<int> package = [];
        List<int> costElement = [];
        List<long> amount = [];
        List<long> hours = [];
        for (var at = 0; at < Packages; at++)
        {
            var first = draw.Below(CostElements.Count);
            var count = draw.Between(1, mostCostElements);
            for (var i = 0; i < count; i++)
            {
                package.Add(ElementOf(at));
                costElement.Add((first + i) % CostElements.Count);
                amount.Add(draw.Between(100, 100_000_000));
                hours.Add(draw.Below(1_000_000));
            }
        }

        return Tables.Of(
            BudgetTable.Definition,
            package.Count,
            (BudgetTable.Package, Tables.Of([.. package])),
            (BudgetTable.CostElement, Tables.Of([.. costElement])),
            (BudgetTable.Amount, Tables.Of([.. amount])),
            (BudgetTable.Hours, Tables.Of([.. hours])),
            (BudgetTable.Converted, Tables.Of([.. amount]))
        );
    }

    /// <summary>Reports of per cent complete: a start and two or three later rows for each package under way.</summary>
    public Table StatusRows(int lastPeriod)
    {
        List<int> package = [];
        List<int> period = [];
        List<int> started = [];
        List<int> finished = [];
        List<int> percent = [];
        for (var at = 0; at < Packages; at++)
        {
            var share = 0;
            var first = Array.FindIndex(PeriodEnds, end => end >= Start[at]);
            for (var report = 0; report < 4 && first + report <= lastPeriod; report++)
            {
                share += draw.Below(4_000);
                package.Add(ElementOf(at));
                period.Add(first + report + 1);
                started.Add(report == 0 ? Start[at] : Cell.NoInt);
                finished.Add(share >= 10_000 ? PeriodEnds[first + report] : Cell.NoInt);
                percent.Add(Math.Min(share, 10_000));
                if (share >= 10_000)
                {
                    break;
                }
            }
        }

        return Tables.Of(
            StatusTable.Definition,
            package.Count,
            (StatusTable.Package, Tables.Of([.. package])),
            (StatusTable.Period, Tables.Of([.. period])),
            (StatusTable.Started, Tables.Of([.. started])),
            (StatusTable.Finished, Tables.Of([.. finished])),
            (StatusTable.Percent, Tables.Of([.. percent]))
        );
    }

    /// <summary>Ledger rows of actual cost on packages, in any order.</summary>
    public Table ActualRows(int count, int lastPeriod)
    {
        var charge = new int[count];
        var period = new int[count];
        var costElement = new int[count];
        var amount = new long[count];
        var kind = new int[count];
        var document = new string?[count];
        for (var row = 0; row < count; row++)
        {
            charge[row] = ActualTable.Charge.EncodeReference(
                ActualTable.ChargedPackage,
                ElementOf(draw.Below(Packages))
            );
            period[row] = draw.Below(lastPeriod + 1) + 1;
            costElement[row] = draw.Below(CostElements.Count);
            amount[row] = draw.Between(-100_000, 1_000_000);
            kind[row] = draw.Below(10) == 0 ? ActualTable.Accrual : ActualTable.Invoiced;
            document[row] = "D";
        }

        return Tables.Of(
            ActualTable.Definition,
            count,
            (ActualTable.Document, Tables.Of(document)),
            (ActualTable.Line, Tables.Of(document)),
            (ActualTable.Charge, Tables.Of(charge)),
            (ActualTable.Period, Tables.Of(period)),
            (ActualTable.CostElement, Tables.Of(costElement)),
            (ActualTable.Amount, Tables.Of(amount)),
            (ActualTable.Kind, Tables.Of(kind)),
            (ActualTable.Converted, Tables.Of(amount))
        );
    }

    private static string AccountCode(int account) =>
        string.Create(CultureInfo.InvariantCulture, $"A{account:0000}");

    private static int WorkDay(int day) => day - Math.Max(0, (day % 7) - 4);

    private static string Text(DateOnly date) =>
        date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The day before the first period: nothing is closed.</summary>
    private static string StatusDate() => Text(ProjectStart.AddDays(-1));

    private int[] Each(Func<int, int> value) => [.. Enumerable.Range(0, Packages).Select(value)];
}
