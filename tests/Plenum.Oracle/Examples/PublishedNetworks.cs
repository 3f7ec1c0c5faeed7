namespace Plenum.Oracle.Examples;

/// <summary>
/// Networks as textbooks print them, in instants from 0: a start of 4 follows a finish of 4. Each source note says how the
/// figures are known: "seen" (text of the source), "from memory", and "computed" for figures that the source does not give
/// and that were worked out by hand from its durations and predecessors.
/// </summary>
public static class PublishedNetworks
{
    public static IReadOnlyList<PublishedNetwork> All { get; } =
    [
        NineActivities(),
        AirFilter(),
        PlantConstruction(),
        PortaVac(),
        AllLinkTypes(deadline: null),
        AllLinkTypes(deadline: 14),
    ];

    private static PublishedNetwork NineActivities() =>
        new(
            "Nine activities of site work",
            "Hendrickson, Project Management for Construction, ch. 10; durations and predecessors from memory, dates computed.",
            30,
            ["A", "C", "F", "I"],
            [
                new("A", 4, "", 0, 4, 0, 4, 0, 0),
                new("B", 3, "", 0, 3, 9, 12, 9, 9),
                new("C", 8, "A", 4, 12, 4, 12, 0, 0),
                new("D", 7, "A", 4, 11, 15, 22, 11, 10),
                new("E", 9, "B, C", 12, 21, 13, 22, 1, 0),
                new("F", 12, "B, C", 12, 24, 12, 24, 0, 0),
                new("G", 2, "D, E", 21, 23, 22, 24, 1, 1),
                new("H", 5, "D, E", 21, 26, 25, 30, 4, 4),
                new("I", 6, "F, G", 24, 30, 24, 30, 0, 0),
            ]
        );

    private static PublishedNetwork AirFilter() =>
        new(
            "Air filter installation",
            "Heizer and Render, Operations Management, project chapter; logic, estimates and the lengths of its paths seen in class notes and a reprint, dates computed.",
            15,
            ["A", "C", "E", "G", "H"],
            [
                new("A", 2, "", 0, 2, 0, 2, 0, 0),
                new("B", 3, "", 0, 3, 1, 4, 1, 0),
                new("C", 2, "A", 2, 4, 2, 4, 0, 0),
                new("D", 4, "A, B", 3, 7, 4, 8, 1, 1),
                new("E", 4, "C", 4, 8, 4, 8, 0, 0),
                new("F", 3, "C", 4, 7, 10, 13, 6, 6),
                new("G", 5, "D, E", 8, 13, 8, 13, 0, 0),
                new("H", 2, "F, G", 13, 15, 13, 15, 0, 0),
            ]
        );

    private static PublishedNetwork PlantConstruction() =>
        new(
            "Construction of a plant",
            "Hillier and Lieberman, Introduction to Operations Research, chapter on project management; most durations seen, predecessors from memory, dates computed.",
            44,
            ["A", "B", "C", "E", "F", "J", "L", "N"],
            [
                new("A", 2, "", 0, 2, 0, 2, 0, 0),
                new("B", 4, "A", 2, 6, 2, 6, 0, 0),
                new("C", 10, "B", 6, 16, 6, 16, 0, 0),
                new("D", 6, "C", 16, 22, 20, 26, 4, 0),
                new("E", 4, "C", 16, 20, 16, 20, 0, 0),
                new("F", 5, "E", 20, 25, 20, 25, 0, 0),
                new("G", 7, "D", 22, 29, 26, 33, 4, 0),
                new("H", 9, "E, G", 29, 38, 33, 42, 4, 0),
                new("I", 7, "C", 16, 23, 18, 25, 2, 2),
                new("J", 8, "F, I", 25, 33, 25, 33, 0, 0),
                new("K", 4, "J", 33, 37, 34, 38, 1, 1),
                new("L", 5, "J", 33, 38, 33, 38, 0, 0),
                new("M", 2, "H", 38, 40, 42, 44, 4, 4),
                new("N", 6, "K, L", 38, 44, 38, 44, 0, 0),
            ]
        );

    private static PublishedNetwork PortaVac() =>
        new(
            "A new vacuum cleaner",
            "Anderson, Sweeney and Williams, An Introduction to Management Science, chapter on project scheduling; data from memory, length, critical path and floats computed.",
            17,
            ["A", "E", "H", "I", "J"],
            [
                new("A", 6, "", null, null, null, null, 0, 0),
                new("B", 2, "", null, null, null, null, 7, 7),
                new("C", 3, "A", null, null, null, null, 4, 0),
                new("D", 5, "A", null, null, null, null, 1, 0),
                new("E", 3, "A", null, null, null, null, 0, 0),
                new("F", 2, "C", null, null, null, null, 4, 4),
                new("G", 3, "D", null, null, null, null, 1, 1),
                new("H", 4, "B, E", null, null, null, null, 0, 0),
                new("I", 2, "H", null, null, null, null, 0, 0),
                new("J", 2, "F, G, I", null, null, null, null, 0, 0),
            ]
        );

    /// <summary>A deadline on the last activity takes as much from every float as it lies before the end.</summary>
    private static PublishedNetwork AllLinkTypes(int? deadline)
    {
        var less = deadline is { } day ? 19 - day : 0;
        return new(
            deadline is null
                ? "All link types, with lags and a lead"
                : "All link types, with a deadline five days before the end",
            "Constructed by hand for this purpose; in no publication.",
            19,
            ["A", "C", "E", "F", "G"],
            [
                new("A", 5, "", 0, 5, 0 - less, 5 - less, 0 - less, 0),
                new("B", 8, "A SS +2", 2, 10, 3 - less, 11 - less, 1 - less, 0),
                new("C", 4, "A FS +3", 8, 12, 8 - less, 12 - less, 0 - less, 0),
                new("D", 6, "B FF +2", 6, 12, 7 - less, 13 - less, 1 - less, 1),
                new("E", 3, "C, D FS -1", 12, 15, 12 - less, 15 - less, 0 - less, 0),
                new("F", 5, "E SF +6", 13, 18, 13 - less, 18 - less, 0 - less, 0),
                new("G", 1, "E, F, B", 18, 19, 18 - less, 19 - less, 0 - less, 0),
            ]
        )
        {
            Deadline = deadline is { } end ? ("G", end) : null,
        };
    }
}

/// <summary>A network with what must come out of it.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Source">Where it comes from, and how the figures are known.</param>
/// <param name="Length">From beginning to end.</param>
/// <param name="Critical">The critical activities, which are its one critical path in order.</param>
/// <param name="Activities">The activities.</param>
public sealed record PublishedNetwork(
    string Name,
    string Source,
    int Length,
    IReadOnlyList<string> Critical,
    IReadOnlyList<PublishedActivity> Activities
)
{
    /// <summary>An activity that must not finish later than an instant.</summary>
    public (string Activity, int Instant)? Deadline { get; init; }

    public override string ToString() => Name;
}

/// <param name="Code">Its letter.</param>
/// <param name="Duration">Its duration.</param>
/// <param name="Predecessors">Letters, each with type and lag where it is not FS without lag: <c>A, B SS +2</c>.</param>
/// <param name="EarlyStart">Early start; null where the source gives none.</param>
/// <param name="EarlyFinish">Early finish.</param>
/// <param name="LateStart">Late start.</param>
/// <param name="LateFinish">Late finish.</param>
/// <param name="TotalFloat">Total float.</param>
/// <param name="FreeFloat">Free float.</param>
public sealed record PublishedActivity(
    string Code,
    int Duration,
    string Predecessors,
    int? EarlyStart,
    int? EarlyFinish,
    int? LateStart,
    int? LateFinish,
    int TotalFloat,
    int FreeFloat
);
