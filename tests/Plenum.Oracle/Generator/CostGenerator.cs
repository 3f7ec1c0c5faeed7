using System.Globalization;
using System.Numerics;
using Plenum.Oracle.Model;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up the cost ledger, the commitments and the budget ledger.</summary>
internal static class CostGenerator
{
    public static void AddTo(Draft draft)
    {
        AddActuals(draft);
        AddCommitments(draft);
        if (draft.Dice.Chance(60))
        {
            AddPostings(draft);
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string CostElement(Dice dice) => dice.Pick(CostElements.All);

    private static void AddActuals(Draft draft)
    {
        var dice = draft.Dice;
        var document = 0;
        foreach (var package in draft.Packages.Where(_ => dice.Chance(75)))
        {
            AddCharges(draft, package.Code, Math.Max(package.TotalBudget, 500), ref document);
        }

        foreach (var account in draft.Accounts.Where(_ => dice.Chance(40)))
        {
            AddCharges(draft, account.Code, 100_000, ref document);
        }
    }

    private static void AddCharges(Draft draft, string charge, long size, ref int document)
    {
        var dice = draft.Dice;
        foreach (
            var period in draft.Periods.Take(draft.PeriodsReported).Where(_ => dice.Chance(45))
        )
        {
            document++;
            var lines = dice.Between(1, 3);
            for (var line = 1; line <= lines; line++)
            {
                var amount = dice.Between(1, Math.Max(2, size / 4));
                var row = draft.Text.Add(
                    "actuals",
                    ("document", "D" + Text(document)),
                    ("line", Text(line)),
                    ("charge", charge),
                    ("period", period.Code),
                    ("cost_element", CostElement(dice))
                );
                draft.SetAmount(row, dice.Chance(12) ? -amount : amount);
                row["hours"] = dice.Chance(30) ? draft.Hours(80) : "";
                row["kind"] = dice.Pick("", "", "invoiced", "accrual", "accrual");
            }
        }
    }

    private static void AddCommitments(Draft draft)
    {
        var dice = draft.Dice;
        var order = 0;
        foreach (var package in draft.Packages.Where(_ => dice.Chance(35)))
        {
            order++;
            var lines = dice.Between(1, 3);
            for (var line = 1; line <= lines; line++)
            {
                var dated = dice.Chance(75);
                draft.Text.Add(
                    "commitments",
                    ("order", "PO-" + Text(order)),
                    ("line", Text(line)),
                    ("package", package.Code),
                    ("cost_element", CostElement(dice)),
                    ("amount", draft.Money(dice.Between(0, Math.Max(package.TotalBudget, 500)))),
                    ("pending", dice.Chance(25) ? draft.Money(dice.Between(1, 5000)) : ""),
                    ("supplier", dice.Chance(30) ? "Supplier, no. " + Text(order) : ""),
                    (
                        "date",
                        dated
                            ? Draft.Iso(
                                dice.Day(draft.FirstDay.AddDays(-10), draft.LastDay.AddDays(10))
                            )
                            : ""
                    )
                );
            }
        }
    }

    /// <summary>
    /// An opening posting and, sometimes, a later change, after which each account has the budget of its packages;
    /// the budget of packages without account is in no posting.
    /// </summary>
    private static void AddPostings(Draft draft)
    {
        var dice = draft.Dice;
        AddChange(draft, "C1", "Opening");
        var number = 0;
        Post(
            draft,
            "C1",
            ref number,
            "contract",
            "undistributed",
            dice.Chance(70) ? dice.Between(1, 2_000_000) : 0
        );
        Post(
            draft,
            "C1",
            ref number,
            "contract",
            "allowances",
            dice.Chance(40) ? dice.Between(1, 300_000) : 0
        );
        Post(
            draft,
            "C1",
            ref number,
            "contract",
            "reserve",
            dice.Chance(60) ? dice.Between(1, 500_000) : 0
        );
        var late = dice.Chance(40);
        var facts = new FactReader(draft.Text).Read();
        var later = new List<(string Account, BigInteger Amount)>();
        foreach (var account in facts.Accounts)
        {
            var budget = facts
                .Packages.Where(package => AccountOf.Package(facts, package)?.Code == account.Code)
                .Aggregate(BigInteger.Zero, (sum, package) => sum + package.TotalBudget);
            if (late && dice.Chance(40))
            {
                later.Add((account.Code, budget));
                Post(draft, "C1", ref number, "contract", "undistributed", budget);
            }
            else
            {
                Post(draft, "C1", ref number, "contract", account.Code, budget);
            }
        }

        if (later.Count > 0)
        {
            AddChange(draft, "C2", "Distribution");
            number = 0;
            foreach (var (account, amount) in later)
            {
                Post(draft, "C2", ref number, "undistributed", account, amount);
            }
        }
    }

    private static void AddChange(Draft draft, string change, string title) =>
        draft.Text.Add(
            "changes",
            ("change", change),
            ("title", title),
            ("reason", "contract"),
            ("state", "approved"),
            ("decided_on", Draft.Iso(draft.FirstDay)),
            ("decided_by", "ann")
        );

    private static void Post(
        Draft draft,
        string change,
        ref int number,
        string from,
        string to,
        BigInteger amount
    )
    {
        if (amount.IsZero)
        {
            return;
        }

        number++;
        draft.Text.Add(
            "postings",
            ("change", change),
            ("posting", Text(number)),
            ("from", from),
            ("to", to),
            ("amount", draft.Money(amount)),
            ("cost_element", "")
        );
    }
}
