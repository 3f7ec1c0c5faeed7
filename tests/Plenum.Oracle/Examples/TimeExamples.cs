using System.Globalization;

namespace Plenum.Oracle.Examples;

/// <summary>Earned schedule over the life of a project.</summary>
internal static class TimeExamples
{
    /// <summary>At each month's end: earned value, SV, SPI, ES, SPI(t).</summary>
    private static readonly string[][] Months =
    [
        ["95", "-10", "0.9048", "0.9048", "0.9048"],
        ["180", "-20", "0.9000", "1.7895", "0.8947"],
        ["470", "-45", "0.9126", "2.8571", "0.9524"],
        ["770", "-75", "0.9112", "3.7727", "0.9432"],
        ["1065", "-110", "0.9064", "4.6667", "0.9333"],
        ["1315", "-160", "0.8915", "5.4667", "0.9111"],
        ["1610", "-195", "0.8920", "6.4091", "0.9156"],
        ["1900", "-235", "0.8899", "7.2879", "0.9110"],
        ["2150", "-285", "0.8830", "8.0500", "0.8944"],
        ["2275", "-390", "0.8537", "8.4667", "0.8467"],
        ["2425", "-335", "0.8786", "8.9667", "0.8152"],
        ["2555", "-268", "0.9051", "9.5217", "0.7935"],
        ["2695", "-128", "0.9547", "10.3158", "0.7935"],
        ["2770", "-53", "0.9812", "11.1587", "0.7971"],
        ["2823", "0", "1.0000", "12.0000", "0.8000"],
    ];

    private static readonly int[] Planned =
    [
        105,
        200,
        515,
        845,
        1175,
        1475,
        1805,
        2135,
        2435,
        2665,
        2760,
        2823,
    ];

    public static WorkedExample LateFinish()
    {
        var builder = ExampleBuilder
            .Months("E16 Late finish, twelve months planned, fifteen taken", 15)
            .Package("T", "units", "2823", 1, 12, "periods", quantity: "2823")
            .PlannedPerPeriod(
                "T",
                [.. Planned.Select((total, i) => Text(total - (i == 0 ? 0 : Planned[i - 1])))]
            )
            .Started("T", 1);
        for (var month = 1; month <= Months.Length; month++)
        {
            var figures = Months[month - 1];
            builder
                .Status("T", month, "units_done", figures[0])
                .Expect(
                    "*total",
                    month,
                    ("pv", Text(Planned[Math.Min(month, Planned.Length) - 1])),
                    ("ev", figures[0]),
                    ("sv", figures[1]),
                    ("spi", figures[2]),
                    ("es", figures[3]),
                    ("at_periods", Text(month)),
                    ("spi_t", figures[4])
                );
        }

        return builder
            // 12 / SPI(t) = 12.6000 months: January 2027, day 19 (0.6 x 31 = 18.6).
            .Expect("*total", 3, ("forecast_finish", "2027-01-19"))
            // 12.8571 months: January 2027, day 27 (6/7 x 31 = 26.6).
            .Expect("*total", 5, ("forecast_finish", "2027-01-27"))
            // 15.1233 months: a sixteenth as long as March 2027, day 4 (0.1233 x 31 = 3.8).
            .Expect("*total", 12, ("forecast_finish", "2027-04-04"))
            .Expect("*total", 15, ("forecast_finish", "2027-03-31"))
            .Build(
                "Lipke, Schedule is Different, The Measurable News, 2003, notional late-finish project: series from "
                    + "memory; formulas of earned schedule seen in Lipke and Henderson, Earned Schedule Training, 2006; "
                    + "all values computed. Months from January 2026 and the dates constructed."
            );
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
