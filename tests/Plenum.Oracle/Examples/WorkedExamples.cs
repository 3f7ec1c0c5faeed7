namespace Plenum.Oracle.Examples;

/// <summary>
/// Worked examples of earned value as projects in tables. Each source note says how the figures are known: "seen"
/// (text of the source), "seen second hand" (digest, reprint, solution sheet or exercise page), "from memory", and
/// "computed" for figures that the source does not give and that were computed with full precision from its inputs.
/// Dates, and how planned value is laid into periods, are constructed wherever a source gives totals only.
/// </summary>
public static class WorkedExamples
{
    public static IReadOnlyList<WorkedExample> All { get; } =
    [
        SingleFigureExamples.RailwayTrack(),
        SingleFigureExamples.OneYearProject(),
        SingleFigureExamples.AheadAndUnder(),
        SingleFigureExamples.MixedSigns(),
        SingleFigureExamples.HalfWay(),
        SingleFigureExamples.PercentTakenFromCost(),
        PackageExamples.TenPackages(),
        PackageExamples.SixTasks("50/50"),
        PackageExamples.SixTasks("0/100"),
        PackageExamples.JobLog(costOfOpenTasks: false),
        PackageExamples.JobLog(costOfOpenTasks: true),
        PackageExamples.PersonDayAssignment(),
        PackageExamples.PersonDayProblem(),
        PackageExamples.RollUp(),
        TechniqueExamples.OnePerTechnique(),
        TimeExamples.LateFinish(),
    ];
}
