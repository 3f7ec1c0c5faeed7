namespace Plenum.Oracle.Examples;

/// <summary>One package for each technique.</summary>
internal static class TechniqueExamples
{
    public static WorkedExample OnePerTechnique() =>
        ExampleBuilder
            .Weeks("E18 One package per technique", 10)
            .Package("A", "0/100", "1000", 1, 3)
            .Package("B", "50/50", "1000", 4, 5)
            .Package("C", "25/75", "1000", 4, 5)
            .Package("D", "milestones", "1000", 1, 10)
            .Package("E", "percent", "1000", 1, 10)
            .Package("F", "units", "1000", 1, 10, quantity: "400")
            .Package("G", "loe", "1000", 1, 10)
            .Package("H", "apportioned", "1000", 1, 10, basis: "E")
            .Started("A", 1)
            .Started("B", 4)
            .Milestone("D", "M1", "20", planned: 2, done: 2)
            .Milestone("D", "M2", "30", planned: 4, done: null)
            .Milestone("D", "M3", "50", planned: 9, done: 4)
            .Started("E", 1)
            .Status("E", 4, "percent", "35")
            .Started("F", 1)
            .Status("F", 4, "units_done", "130")
            .Expect("A", 4, ("pv", "1000"), ("ev", "0"))
            .Expect("B", 4, ("pv", "500"), ("ev", "500"))
            .Expect("C", 4, ("pv", "250"), ("ev", "0"))
            .Expect("D", 4, ("pv", "500"), ("ev", "700"))
            .Expect("E", 4, ("pv", "400"), ("ev", "350"))
            .Expect("F", 4, ("pv", "400"), ("ev", "325"))
            .Expect("G", 4, ("pv", "400"), ("ev", "400"))
            .Expect("H", 4, ("pv", "400"), ("ev", "350"))
            .Expect(
                "*total",
                4,
                ("pv", "3850"),
                ("ev", "2625"),
                ("sv", "-1225"),
                ("spi", "0.681818")
            )
            .Build("Constructed and computed, no publication; weeks of five working days each.");
}
