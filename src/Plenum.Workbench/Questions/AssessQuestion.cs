using Plenum.Core;
using Plenum.Core.Network;
using Plenum.Core.Network.Assessment;

namespace Plenum.Workbench.Questions;

/// <summary>Can the schedule be relied on? The 14-point assessment, and measures of the ten best practices.</summary>
/// <param name="At">With the progress that is reported up to this day; null for the project's status date.</param>
public sealed record AssessQuestion(DateOnly? At = null)
{
    /// <exception cref="QuestionException">The network cannot be computed.</exception>
    public AssessAnswer Ask(Project project)
    {
        try
        {
            var network = At is null ? project.Network : ProjectNetwork.At(project, At);
            var audited = ProjectAssessment.Of(project, network);
            return new AssessAnswer(
                project.Revision,
                At ?? project.Settings.StatusDate,
                network,
                ScheduleAssessment.Of(audited.Dates, audited.Facts, audited.Limits),
                SchedulePractices.Of(audited.Dates, audited.Facts, audited.Limits)
            );
        }
        catch (NetworkException wrong)
        {
            throw new QuestionException(wrong.Message);
        }
    }
}

/// <summary>The answer to an <see cref="AssessQuestion"/>.</summary>
/// <param name="Revision">Revision of the project that answered.</param>
/// <param name="StatusDate">The day up to which progress counts.</param>
/// <param name="Network">The network that was assessed.</param>
/// <param name="Metrics">The fourteen metrics in order.</param>
/// <param name="Practices">Measures of the ten best practices.</param>
public sealed record AssessAnswer(
    long Revision,
    DateOnly? StatusDate,
    ProjectNetwork Network,
    IReadOnlyList<AssessmentMetric> Metrics,
    IReadOnlyList<PracticeMeasure> Practices
)
{
    /// <summary>Codes of the activities that a metric counted or is about.</summary>
    public IEnumerable<string> ActivitiesOf(AssessmentMetric metric) =>
        metric.Activities.Select(Network.Code);

    /// <summary>The links that a metric counted.</summary>
    public IEnumerable<LinkRow> LinksOf(AssessmentMetric metric) =>
        metric.Links.Select(link => new LinkRow(Network, link, null));
}
