using System.Globalization;
using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>
/// changes, postings: the contract opens the ledger, three baselines distribute it, changes move parts of it. What
/// each control account holds in the end is the sum of its packages' budgets.
/// </summary>
internal static class ChangeTables
{
    private const long Rounded = 1_000_00;

    /// <summary>change | title | reason | state | decided on | decided by | from | to | amount in thousand</summary>
    private const string Changes = """
        C-000 | Contract award | Contract signed | implemented | 2026-02-20 | a.lindgren | | |
        C-001 | Baseline A | First distribution of the budget | implemented | 2026-03-16 | a.lindgren | | |
        C-002 | Second pass with two racks | Owner lowered the boron limit | implemented | 2026-06-22 | a.lindgren | reserve | 03.7-MEC | 640
        C-003 | Shore crossing by tunnel | Dunes are protected | implemented | 2026-07-20 | a.lindgren | reserve | 01.2-MAR | 880
        C-004 | Baseline B | Distribution after tender of civil works | implemented | 2026-08-31 | a.lindgren | | |
        C-005 | Taller filter gallery | Maintenance needs room for lifting | implemented | 2026-10-05 | a.lindgren | allowances | 02.3-CIV | 120
        C-006 | Fewer parking places | Township asks for green strip | implemented | 2026-10-19 | a.lindgren | 11.2-SIT | undistributed | 95
        C-007 | Spare motor for intake pumps | Delivery time of motors has doubled | implemented | 2026-11-23 | a.lindgren | reserve | 01.3-MEC | 260
        C-008 | Baseline C | Distribution after purchase of the main equipment | implemented | 2027-01-12 | a.lindgren | | |
        C-009 | Valley crossing in concrete bed | Ground water found at 1.2 m | implemented | 2027-03-08 | a.lindgren | reserve | 06.2-PIP | 420
        C-010 | Harmonic filters of higher rating | Grid owner changed the limits | implemented | 2027-05-24 | a.lindgren | reserve | 08.3-ELE | 310
        C-011 | Cladding in a second colour | Architect of the township | rejected | 2027-06-14 | a.lindgren | | |
        C-012 | Third product-water tank | Owner wants nine hours of storage | submitted | | | | |
        C-013 | Salinity measured for two years | Scope item 4.5.2 has no part for it | draft | | | | |
        C-014 | Longer working hours at the RO hall | Floor runs behind its dates | approved | 2027-08-27 | a.lindgren | | |
        """;

    public static void Write(DemoPlan plan, TableFolder tables)
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
        var postings = new Postings(tables);
        var lines = PlantText.Lines(Changes).Select(line => PlantText.Cells(line, 9)).ToList();
        var budgets = plan.Accounts.ToDictionary(
            account => account,
            account => account.Packages.Sum(p => p.Budget)
        );
        // What is left to distribute to each account, once the changes have given and taken their part.
        var left = new Dictionary<Account, long>(budgets);
        long fromReserve = 0;
        long fromAllowances = 0;
        foreach (var cells in lines.Where(cells => cells[6].Length > 0))
        {
            var amount = PlantText.Whole(cells[8]) * Rounded;
            var account = plan.Accounts.Find(account =>
                account.Code == cells[6] || account.Code == cells[7]
            )!;
            left[account] += cells[6] == account.Code ? amount : -amount;
            fromReserve += cells[6] == "reserve" ? amount : 0;
            fromAllowances += cells[6] == "allowances" ? amount : 0;
        }
        var measured =
            DemoProject.BudgetAtCompletion
            - plan.Packages.Sum(p => p.Budget)
            + budgets.Values.Sum();
        foreach (var cells in lines)
        {
            changes
                .Text(cells[0])
                .Text(cells[1])
                .Text(cells[2])
                .Text(cells[3])
                .Text(cells[4])
                .Text(cells[5])
                .EndRow();
            switch (cells[0])
            {
                case "C-000":
                    var allowances = DemoProject.Allowances + fromAllowances;
                    postings.Post(
                        cells[0],
                        "contract",
                        "reserve",
                        DemoProject.Reserve + fromReserve
                    );
                    postings.Post(cells[0], "contract", "allowances", allowances);
                    postings.Post(
                        cells[0],
                        "contract",
                        "undistributed",
                        measured - fromReserve - allowances
                    );
                    break;
                case "C-001":
                    Distribute(postings, cells[0], budgets, left, 82);
                    break;
                case "C-004":
                    Distribute(postings, cells[0], budgets, left, 10);
                    break;
                case "C-008":
                    Distribute(postings, cells[0], budgets, left, 100);
                    break;
                default:
                    if (cells[6].Length > 0)
                    {
                        postings.Post(
                            cells[0],
                            cells[6],
                            cells[7],
                            PlantText.Whole(cells[8]) * Rounded
                        );
                    }
                    break;
            }
        }
    }

    /// <summary>Gives each account so many per cent of its budget, in whole thousands; at 100 all that is left.</summary>
    private static void Distribute(
        Postings postings,
        string change,
        Dictionary<Account, long> budgets,
        Dictionary<Account, long> left,
        int percent
    )
    {
        foreach (var (account, budget) in budgets)
        {
            var amount =
                percent == 100
                    ? left[account]
                    : Math.Min(left[account], budget * percent / 100 / Rounded * Rounded);
            if (amount > 0)
            {
                postings.Post(change, "undistributed", account.Code, amount);
                left[account] -= amount;
            }
            else if (amount < 0)
            {
                postings.Post(change, account.Code, "undistributed", -amount);
                left[account] -= amount;
            }
        }
    }

    private sealed class Postings(TableFolder tables)
    {
        private readonly TableWriter _table = tables.Open(
            "postings",
            "change",
            "posting",
            "from",
            "to",
            "amount",
            "cost_element"
        );
        private int _number;

        public void Post(string change, string from, string to, long amount) =>
            _table
                .Text(change)
                .Text((++_number).ToString(CultureInfo.InvariantCulture))
                .Text(from)
                .Text(to)
                .Hundredths(amount)
                .Empty()
                .EndRow();
    }
}
