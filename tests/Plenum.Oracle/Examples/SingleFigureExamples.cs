namespace Plenum.Oracle.Examples;

/// <summary>Examples that give one planned value, one earned value and one actual cost.</summary>
internal static class SingleFigureExamples
{
    public static WorkedExample RailwayTrack() =>
        ExampleBuilder
            .Weeks("E1 Railway track", 4)
            .Package("T", "percent", "4000000", 1, 4)
            .Started("T", 1)
            .Status("T", 3, "percent", "25")
            .Cost("T", 3, "2000000")
            .Expect(
                "*total",
                3,
                ("pv", "3000000"),
                ("ev", "1000000"),
                ("ac", "2000000"),
                ("bac", "4000000"),
                ("cv", "-1000000"),
                ("sv", "-2000000"),
                ("cpi", "0.5"),
                ("spi", "0.333333"),
                ("percent_complete", "0.25"),
                ("eac_cpi", "8000000"),
                ("eac_cpi_spi", "20000000"),
                ("tcpi_bac", "1.5"),
                ("es", "1"),
                ("at_periods", "3"),
                ("spi_t", "0.333333"),
                // Twelve weeks from 5 January.
                ("forecast_finish", "2026-03-29")
            )
            .Build(
                "GAO-20-195G Cost Estimating and Assessment Guide (2020), chapter on earned value, seen second hand: "
                    + "inputs, 8 million and the trebled schedule; the same example stands in GAO-09-3SP (2009), from "
                    + "memory. Everything else computed; as planned value is a straight line, 4/SPI weeks is also the "
                    + "forecast by earned schedule."
            );

    public static WorkedExample OneYearProject() =>
        ExampleBuilder
            .Months("E3 One-year project", 12)
            .Package("T", "units", "120000", 1, 12, "periods", quantity: "6")
            .PlannedPerPeriod("T", ["11500", "11500", .. Enumerable.Repeat("9700", 10)])
            .Started("T", 1)
            .Status("T", 2, "units_done", "1")
            .Cost("T", 2, "25000")
            .Expect(
                "*total",
                2,
                ("pv", "23000"),
                ("ev", "20000"),
                ("ac", "25000"),
                ("bac", "120000"),
                ("cv", "-5000"),
                ("sv", "-3000"),
                ("cpi", "0.8"),
                ("spi", "0.869565"),
                ("eac_cpi", "150000"),
                ("tcpi_bac", "1.052632")
            )
            .Build(
                "Schwalbe, Information Technology Project Management, exercise of the cost chapter, seen second hand: "
                    + "statement, CV and EAC; the rest computed. Earned value as one unit of six; planned value in the "
                    + "first two of twelve months (constructed)."
            );

    public static WorkedExample AheadAndUnder() =>
        ExampleBuilder
            .Months("E4 Ahead and under", 12)
            .Package("T", "units", "235000", 1, 12, "periods", quantity: "235")
            .PlannedPerPeriod(
                "T",
                [.. Enumerable.Repeat("20000", 6), .. Enumerable.Repeat("19000", 5), "20000"]
            )
            .Started("T", 1)
            .Status("T", 6, "units_done", "125")
            .Cost("T", 6, "120000")
            .Expect(
                "*total",
                6,
                ("pv", "120000"),
                ("ev", "125000"),
                ("ac", "120000"),
                ("bac", "235000"),
                ("cv", "5000"),
                ("sv", "5000"),
                ("cpi", "1.041667"),
                ("spi", "1.041667"),
                ("eac_cpi", "225600"),
                ("tcpi_bac", "0.956522")
            )
            .Build(
                "Exercise published on a study-help site, textbook not named: statement seen, results computed. "
                    + "Distribution over the months constructed."
            );

    public static WorkedExample MixedSigns() =>
        ExampleBuilder
            .Months("E5 Mixed signs", 6)
            .Package("T", "units", "120000", 1, 6, "periods", quantity: "120")
            .PlannedPerPeriod("T", [.. Enumerable.Repeat("20000", 6)])
            .Started("T", 1)
            .Status("T", 3, "units_done", "55")
            .Cost("T", 3, "50000")
            .Expect(
                "*total",
                3,
                ("pv", "60000"),
                ("ev", "55000"),
                ("ac", "50000"),
                ("bac", "120000"),
                ("cv", "5000"),
                ("sv", "-5000"),
                ("cpi", "1.1"),
                ("spi", "0.916667"),
                ("eac_cpi", "109090.909091"),
                ("eac_cpi_spi", "114462.809917"),
                ("tcpi_bac", "0.928571"),
                ("spi_t", "0.916667"),
                // 6/SPI = 6.545455 months: in a seventh month as long as the sixth, on day 17 of 30 (0.545455 x 30 = 16.4).
                ("forecast_finish", "2026-07-17")
            )
            .Build(
                "Exercise published on a study-help site, textbook not named: statement seen, results computed. "
                    + "Planned value a straight line over six months, so that SPI(t) = SPI; the date constructed."
            );

    public static WorkedExample HalfWay() =>
        ExampleBuilder
            .Months("E15 Half-way", 2)
            .Package("T", "percent", "100000", 1, 2, "periods")
            .PlannedPerPeriod("T", "55000", "45000")
            .Started("T", 1)
            .Status("T", 1, "percent", "50")
            .Cost("T", 1, "45000")
            .Expect(
                "*total",
                1,
                ("pv", "55000"),
                ("ev", "50000"),
                ("ac", "45000"),
                ("bac", "100000"),
                ("sv", "-5000"),
                ("cv", "5000"),
                ("spi", "0.909091"),
                ("cpi", "1.111111"),
                ("eac_cpi", "90000")
            )
            .Build(
                "University slides on earned schedule, Spring 2024: inputs seen, results computed. Two months constructed."
            );

    public static WorkedExample PercentTakenFromCost() =>
        ExampleBuilder
            .Months("E17 Percent complete taken from cost", 1)
            .Package("T", "units", "10000", 1, 1, quantity: "120")
            .Started("T", 1)
            .Status("T", 1, "units_done", "110")
            .Status("T", 1, "etc", "1000")
            .Cost("T", 1, "11000")
            .Expect(
                "*total",
                1,
                ("pv", "10000"),
                ("ev", "9166.67"),
                ("ac", "11000"),
                ("eac", "12000"),
                ("etc", "1000"),
                ("vac", "-2000"),
                ("cpi", "0.83333"),
                ("eac_cpi", "12000"),
                ("tcpi_bac", null)
            )
            .Build(
                "Teaching article What's in Earned Value Management?, part IV, example I, seen: 100 h at 100, 110 h "
                    + "spent, 10 h to go, all due, percent = AC/EAC; EV, EAC and VAC given there. Computed: CPI "
                    + "(0.833333 before EV is rounded to cents, hence five digits here), BAC/CPI, and TCPI to BAC, "
                    + "which is undefined as AC exceeds BAC. Earned as 110 of 120 hours."
            );
}
