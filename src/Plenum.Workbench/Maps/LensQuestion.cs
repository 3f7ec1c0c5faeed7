using Plenum.Core;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>What does a lens say of every element?</summary>
/// <param name="Word">One of <see cref="Words"/>.</param>
/// <param name="At">Everything is taken at the last period end on or before it; null for the status date.</param>
/// <param name="Person">For the lens of people: code of the person who is picked; null for none.</param>
/// <param name="Item">For the lens of scope: number of the item that is picked; null for none.</param>
public sealed record LensQuestion(
    string Word,
    DateOnly? At = null,
    string? Person = null,
    string? Item = null
)
{
    public const string Cost = "cost";
    public const string Schedule = "schedule";
    public const string Completion = "completion";
    public const string Breakdown = "breakdown";
    public const string People = "people";
    public const string Status = "status";
    public const string Network = "network";
    public const string Precision = "precision";
    public const string Scope = "scope";
    public const string Parts = "parts";
    public const string Estimate = "estimate";

    /// <summary>The lenses that there are.</summary>
    public static readonly IReadOnlyList<string> Words =
    [
        Cost,
        Schedule,
        Completion,
        Breakdown,
        People,
        Status,
        Network,
        Precision,
        Scope,
        Parts,
        Estimate,
    ];

    /// <exception cref="QuestionException">There is no such lens, person or item, or no element to show.</exception>
    public Lens Ask(Project project)
    {
        MapDocument.CheckShown(project.Tree);
        return Word switch
        {
            Cost => VarianceLens.Of(project, PeriodOf(project), VarianceLens.Cost),
            Schedule => VarianceLens.Of(project, PeriodOf(project), VarianceLens.Schedule),
            Completion => VarianceLens.Of(project, PeriodOf(project), VarianceLens.Completion),
            Breakdown => BreakdownLens.Of(project),
            People => PeopleLens.Of(project, Person),
            Status => StatusLens.Of(project, PeriodOf(project)),
            Network => NetworkLens.Of(project),
            Parts => PartsLens.Of(project),
            Estimate => EstimateLens.Of(project),
            Precision => PrecisionLens.Of(project, PeriodOf(project)),
            Scope => ScopeLens.Of(project, Item),
            _ => throw new QuestionException(
                $"There is no lens \"{Word}\". Known are {string.Join(", ", Words)}."
            ),
        };
    }

    /// <summary>Words and legend of the lens, without its elements where these take long.</summary>
    /// <inheritdoc cref="Ask"/>
    public LensHead HeadOf(Project project)
    {
        MapDocument.CheckShown(project.Tree);
        return Word switch
        {
            Cost => VarianceLens.HeadOf(project, PeriodOf(project), VarianceLens.Cost),
            Schedule => VarianceLens.HeadOf(project, PeriodOf(project), VarianceLens.Schedule),
            Completion => VarianceLens.HeadOf(project, PeriodOf(project), VarianceLens.Completion),
            _ => Ask(project).Head,
        };
    }

    private int PeriodOf(Project project) =>
        At is { } date ? project.Periods.LastEndedBy(date) : project.CurrentPeriod();
}
