using System.Globalization;

namespace Plenum.Oracle.Examples;

/// <summary>Examples that list tasks.</summary>
internal static class PackageExamples
{
    public static WorkedExample TenPackages()
    {
        string[] cost = ["120000", "110000", "80000", "125000", "75000"];
        string[] percent = ["100", "100", "90", "80", "50"];
        var builder = ExampleBuilder.Months("E6 Ten work packages", 2);
        for (var i = 0; i < 10; i++)
        {
            var code = Code(i);
            var scheduled = i < 5 ? 1 : 2;
            builder.Package(code, "percent", "100000", scheduled, scheduled);
            if (i < 5)
            {
                builder
                    .Started(code, 1)
                    .Status(code, 1, "percent", percent[i])
                    .Cost(code, 1, cost[i]);
            }
        }

        return builder
            .Expect(
                "*total",
                1,
                ("pv", "500000"),
                ("ev", "420000"),
                ("ac", "510000"),
                ("bac", "1000000"),
                ("cv", "-90000"),
                ("sv", "-80000"),
                ("cpi", "0.823529"),
                ("spi", "0.84"),
                ("eac_cpi", "1214285.714286"),
                ("eac_cpi_spi", "1348435.374150"),
                ("tcpi_bac", "1.183673")
            )
            .Build(
                "Exercise published on a study-help site, textbook not named: statement seen, results computed. "
                    + "Two months constructed: five packages in the first, five in the second."
            );
    }

    public static WorkedExample SixTasks(string technique)
    {
        var builder = ExampleBuilder
            .Months("E8 Six tasks by " + technique, 2)
            .Package("A", technique, "3100", 1, 1)
            .Package("B", technique, "4000", 1, 1)
            .Package("C", technique, "2500", 1, 1)
            .Package("D", technique, "4000", 1, 1)
            .Package("E", technique, "3500", 1, 1)
            .Package("F", technique, "2500", 1, 1)
            .Package("later", technique, "30400", 2, 2)
            .Done("A", 1)
            .Done("B", 1)
            .Done("C", 1)
            .Started("D", 1)
            .Done("E", 1)
            .Cost("A", 1, "3100")
            .Cost("B", 1, "4500")
            .Cost("C", 1, "2250")
            .Cost("D", 1, "3500")
            .Cost("E", 1, "4000");
        (string, string?)[] figures =
            technique == "50/50"
                ?
                [
                    ("ev", "15100"),
                    ("sv", "-4500"),
                    ("spi", "0.770408"),
                    ("cv", "-2250"),
                    ("cpi", "0.870317"),
                    ("eac_cpi", "57450.331126"),
                ]
                :
                [
                    ("ev", "13100"),
                    ("sv", "-6500"),
                    ("spi", "0.668367"),
                    ("cv", "-4250"),
                    ("cpi", "0.755043"),
                    ("eac_cpi", "66221.374046"),
                ];
        return builder
            .Expect("*total", 1, [("pv", "19600"), ("ac", "17350"), ("bac", "50000"), .. figures])
            .Build(
                "Exercise reprinted on two study sites: statement seen; attribution to Frame, The New Project "
                    + "Management, from memory; results computed. The rest of the project's budget of 50 000 as one "
                    + "package planned later (constructed)."
            );
    }

    public static WorkedExample JobLog(bool costOfOpenTasks)
    {
        string[] estimated = ["50", "35", "20", "40", "60", "80"];
        string[] actual = ["70", "20", "40", "40"];
        var builder = ExampleBuilder.Months(
            costOfOpenTasks
                ? "E9 Job log, cost of open tasks counted"
                : "E9 Job log, finished tasks only",
            2
        );
        for (var i = 0; i < 6; i++)
        {
            var due = i < 4 ? 1 : 2;
            builder.Package(Code(i), "0/100", estimated[i], due, due);
            if (i < 4)
            {
                builder.Done(Code(i), 1).Cost(Code(i), 1, actual[i]);
            }
        }

        if (costOfOpenTasks)
        {
            builder.Cost(Code(4), 1, "20").Cost(Code(5), 1, "10");
        }

        (string, string?)[] figures = costOfOpenTasks
            ? [("ac", "200"), ("cpi", "0.725")]
            : [("ac", "170"), ("cpi", "0.853"), ("cv", "-25")];
        return builder
            .Expect(
                "*total",
                1,
                [
                    ("pv", "145"),
                    ("ev", "145"),
                    ("bac", "285"),
                    ("spi", "1"),
                    ("sv", "0"),
                    ("percent_complete", "0.50877193"),
                    .. figures,
                ]
            )
            .Build(
                "Solved problem seen in a reprint with its results; attribution to Gustafson, Schaum's Outline of "
                    + "Software Engineering, 2002, from memory. BCWS, BAC, SPI, SV, CPI 85.3 % and CV of the finished "
                    + "tasks are the source's; its 50.7 % sums rounded shares, 50.877193 % is computed. With the 30 "
                    + "days spent on the two open tasks AC is 200 and CPI 0.725 (computed; their division 20 and 10 "
                    + "is constructed): cost of unfinished work must not be dropped. One day stands as one unit of money."
            );
    }

    public static WorkedExample PersonDayAssignment() =>
        PersonDays(
                "E10 Person-day assignment",
                ["11", "8", "5", "13", "11", "15", "8", "7", "10", "12.5", "6", "3"],
                ["10", "9", "4", "13.5", "11", "16", "10", "7", "9", "13", "5", "5"],
                ["10", "5", "6"],
                "489.5"
            )
            .Expect(
                "*total",
                1,
                ("bac", "620"),
                ("pv", "130.5"),
                ("ev", "109.5"),
                ("ac", "112.5"),
                ("spi", "0.839080"),
                ("sv", "-21"),
                ("percent_complete", "0.176613"),
                ("cpi", "0.973333"),
                ("cv", "-3")
            )
            .Build(
                "Virtual University course CS605, assignment 4, June 2010, seen with its results: BCWS, BCWP, ACWP, SV, "
                    + "CV, CPI 0.97; SPI 0.83 and 0.17 complete, which it truncates. Six digits computed. The rest of "
                    + "the 620 person-days as one package planned later (constructed); one person-day as one unit of money."
            );

    public static WorkedExample PersonDayProblem() =>
        PersonDays(
                "E11 Person-day problem",
                ["12", "15", "13", "8", "9.5", "18", "10", "4", "12", "6", "5", "14"],
                ["12.5", "11", "17", "9.5", "9", "19", "10", "4.5", "10", "6.5", "4", "14.5"],
                ["16", "6", "8"],
                "425.5"
            )
            .Expect(
                "*total",
                1,
                ("bac", "582"),
                ("pv", "156.5"),
                ("ev", "126.5"),
                ("ac", "127.5"),
                ("spi", "0.808307"),
                ("sv", "-30"),
                ("percent_complete", "0.21735395"),
                ("cpi", "0.992157"),
                ("cv", "-1")
            )
            .Build(
                "Pressman, Software Engineering: A Practitioner's Approach, problem of the scheduling chapter, data and "
                    + "results from memory; six digits computed. The rest of the 582 person-days as one package planned "
                    + "later (constructed); one person-day as one unit of money."
            );

    public static WorkedExample RollUp() =>
        ExampleBuilder
            .Months("Roll-up of two packages", 2)
            .Package("A", "percent", "100", 1, 1)
            .Package("B", "percent", "1800", 1, 2, "periods")
            .PlannedPerPeriod("B", "900", "900")
            .Done("A", 1)
            .Started("B", 1)
            .Status("B", 1, "percent", "25")
            .Cost("A", 1, "50")
            .Cost("B", 1, "900")
            .Expect("A", 1, ("pv", "100"), ("ev", "100"), ("cpi", "2"), ("eac_cpi", "50"))
            .Expect("B", 1, ("pv", "900"), ("ev", "450"), ("cpi", "0.5"), ("eac_cpi", "3600"))
            .Expect(
                "*total",
                1,
                ("bac", "1900"),
                ("ev", "550"),
                ("ac", "950"),
                ("cpi", "0.578947"),
                ("eac_cpi", "3281.818182")
            )
            .Build(
                "Constructed and computed, no publication: ratios are taken from summed numerators and denominators, "
                    + "so the total's CPI is not the mean 1.25, and forecasts by index do not add (50 + 3600)."
            );

    private static ExampleBuilder PersonDays(
        string name,
        string[] planned,
        string[] actual,
        string[] dueNotDone,
        string later
    )
    {
        var builder = ExampleBuilder.Months(name, 2);
        for (var i = 0; i < planned.Length; i++)
        {
            builder
                .Package(Code(i), "0/100", planned[i], 1, 1)
                .Done(Code(i), 1)
                .Cost(Code(i), 1, actual[i]);
        }

        for (var i = 0; i < dueNotDone.Length; i++)
        {
            builder.Package(Code(planned.Length + i), "0/100", dueNotDone[i], 1, 1);
        }

        return builder.Package("later", "0/100", later, 2, 2);
    }

    private static string Code(int index) =>
        "T" + (index + 1).ToString(CultureInfo.InvariantCulture);
}
