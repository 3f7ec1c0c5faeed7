using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Foundation;

namespace Plenum.Core.Status.Audit;

/// <summary>A package is finished and reports work that remains.</summary>
public sealed class RemainingOfFinishedRule(
    PackageBaseline baseline,
    PackageStatus status,
    int period
) : PackageRule(baseline)
{
    public override string Name => "remaining_of_finished";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "What is finished has nothing left to do: either the finish came too early, or the remaining days were not taken back. "
        + "The finish counts.";

    public override string Remedy => "Take the finish back, or report 0 remaining days.";

    public override string Source =>
        "GAO-16-89G best practice 9 (a valid status); definition of our own";

    protected override string? Message(int package) =>
        period >= 0 && status.RemainingBesideFinish(package, period) is var days and > 0
            ? string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{NameOf(package)} is reported as finished, with {days} working day{(days == 1 ? "" : "s")} remaining."
            )
            : null;
}
