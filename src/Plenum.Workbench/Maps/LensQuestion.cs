using Plenum.Core;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>What does a lens say of every element?</summary>
/// <param name="Word">One of <see cref="Words"/>.</param>
/// <param name="At">Everything is taken at the last period end on or before it; null for the status date.</param>
public sealed record LensQuestion(string Word, DateOnly? At = null, string? Person = null)
{
    public const string Cost = "cost";
    public const string Schedule = "schedule";
    public const string Completion = "completion";
    public const string Breakdown = "breakdown";
    public const string People = "people";
    public const string Status = "status";

    /// <summary>The lenses that there are.</summary>
    public static readonly IReadOnlyList<string> Words = [Cost, Schedule, Completion];

    /// <exception cref="QuestionException">There is no such lens, or no element to show.</exception>
    public Lens Ask(Project project)
    {
        MapDocument.CheckShown(project.Tree);
        return Word switch
        {
            Cost => VarianceLens.OfCost(project, PeriodOf(project)),
            Schedule => VarianceLens.OfSchedule(project, PeriodOf(project)),
            "breakdown" or "people" or "status" => VarianceLens.OfCost(project, PeriodOf(project)),
            Completion => VarianceLens.AtCompletion(project, PeriodOf(project)),
            _ => throw new QuestionException(
                $"There is no lens \"{Word}\". Known are {string.Join(", ", Words)}."
            ),
        };
    }

    private int PeriodOf(Project project) =>
        At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
}
