using System.Globalization;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo;

/// <summary>
/// A row of the cost ledger. The period counts from 0; the amount is in hundredths of the currency, which is null for
/// the project's own; hours are in hundredths and null for all but labour.
/// </summary>
internal sealed record LedgerRow(
    int Period,
    string Document,
    int Line,
    string Charge,
    string CostElement,
    long Amount,
    long? Hours,
    bool IsAccrual,
    ForeignCurrency? Currency
);

/// <summary>
/// Spreads what each package has cost over the periods in which it was worked on, as payroll, invoices, accruals and
/// credit notes, and keeps what was booked per package and cost element.
/// </summary>
internal sealed class Ledger
{
    private const int Last = DemoTime.Closed - 1;

    /// <summary>Share of the cost that arrives in the period of the work; the rest comes a period later.</summary>
    private const double InTime = 0.85;

    private readonly int[] _invoices = new int[DemoTime.Closed];
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private readonly List<LedgerRow> _rows = [];

    /// <summary>By package and cost element, minor units of the project's currency.</summary>
    public Dictionary<(Package, string), long> Spent { get; } = [];

    public IEnumerable<LedgerRow> Rows => _rows.OrderBy(row => row.Period);

    public static Ledger Make(DemoPlan plan, ulong seed)
    {
        var ledger = new Ledger();
        foreach (var package in plan.Packages.Where(package => package.ActualCost > 0))
        {
            ledger.Book(package, new SeededRandom(seed, "ledger " + package.Code));
        }
        foreach (var account in plan.Accounts.Where(account => account.Charged > 0))
        {
            ledger.BookCharges(account);
        }
        return ledger;
    }

    private void Book(Package package, SeededRandom random)
    {
        var documents = new string?[DemoTime.Closed];
        var lines = new int[DemoTime.Closed];
        long budget = 0;
        long given = 0;
        foreach (var line in package.Lines)
        {
            budget += line.Converted;
            var upTo = (long)((Int128)package.ActualCost * budget / package.Budget);
            var cost = upTo - given;
            given = upTo;
            long before = 0;
            for (var period = 0; period <= Last; period++)
            {
                var total = (long)(cost * (Shape(package, period) / Shape(package, Last)));
                if (total > before)
                {
                    Book(package, line, period, total - before, random, documents, lines);
                    before = total;
                }
            }
        }
    }

    private static double Shape(Package package, int period)
    {
        var done = package.Progress.Done;
        return (InTime * done[period]) + ((1 - InTime) * (period == 0 ? 0 : done[period - 1]));
    }

    private void Book(
        Package package,
        BudgetLine line,
        int period,
        long amount,
        SeededRandom random,
        string?[] documents,
        int[] lines
    )
    {
        if (line.CostElement == "labour")
        {
            var hours = amount * 100 / CostMix.HourlyRate(package);
            Add(period, Numbered("PAY", period), package, line, amount, hours, isAccrual: false);
            return;
        }
        var kind = random.Below(100);
        var isAccrual = kind < 10;
        if (isAccrual)
        {
            Add(period, Numbered("ACC", period), package, line, amount, null, isAccrual: true);
        }
        var booked = isAccrual ? period + 1 : period;
        if (booked > Last)
        {
            return;
        }
        // Now and then an invoice is too high and comes back as a credit note in the next period.
        var tooMuch = kind == 99 && booked < Last ? amount / 20 : 0;
        documents[booked] ??= string.Create(
            CultureInfo.InvariantCulture,
            $"INV-{booked + 1:00}-{++_invoices[booked]:0000}"
        );
        Add(
            booked,
            (documents[booked]!, ++lines[booked]),
            package,
            line,
            amount + tooMuch,
            null,
            isAccrual: false
        );
        if (tooMuch > 0)
        {
            Add(
                booked + 1,
                Numbered("CRN", booked + 1),
                package,
                line,
                -tooMuch,
                null,
                isAccrual: false
            );
        }
    }

    private void Add(
        int period,
        (string Document, int Line) place,
        Package package,
        BudgetLine line,
        long converted,
        long? hours,
        bool isAccrual
    )
    {
        var (amount, booked) = line.Currency is { } currency
            ? currency.FromProject(converted)
            : (converted, converted);
        _rows.Add(
            new LedgerRow(
                period,
                place.Document,
                place.Line,
                package.Code,
                line.CostElement,
                amount,
                hours,
                isAccrual,
                line.Currency
            )
        );
        if (!isAccrual || period == Last)
        {
            var key = (package, line.CostElement);
            Spent[key] = Spent.GetValueOrDefault(key) + booked;
        }
    }

    private (string, int) Numbered(string kind, int period)
    {
        var document = string.Create(CultureInfo.InvariantCulture, $"{kind}-{period + 1:00}");
        var line = _lines.GetValueOrDefault(document) + 1;
        _lines[document] = line;
        return (document, line);
    }

    /// <summary>Site cranage and surveys that serve all of an account, in equal parts over the last twelve months.</summary>
    private void BookCharges(Account account)
    {
        const int Months = 12;
        for (var month = 0; month < Months; month++)
        {
            var period = DemoTime.Closed - Months + month;
            var amount =
                (account.Charged * (month + 1) / Months) - (account.Charged * month / Months);
            var (document, line) = Numbered("INT", period);
            var element = month % 3 == 0 ? "subcontract" : "other";
            _rows.Add(
                new LedgerRow(
                    period,
                    document,
                    line,
                    account.Code,
                    element,
                    amount,
                    null,
                    false,
                    null
                )
            );
        }
    }
}
