using Plenum.Core.Baseline;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Time;
using Plenum.Core.Network;
using Plenum.Core.Network.Assessment;
using Plenum.Core.Network.Audit;
using Plenum.Core.Status;
using static Plenum.Core.AuditGround;
using E = Plenum.Core.Breakdown.ElementTable;

namespace Plenum.Core;

internal static partial class GroundedRules
{
    public static readonly GroundedRule[] OfNetwork =
    [
        new(Network, of => new NetworkNotComputedRule(of.Tree.Code(0), of.Network.WhyNot)),
        .. (
            (Func<AuditedNetwork?, AuditRule>[])
                [
                    network => new OpenStartRule(network),
                    network => new OpenFinishRule(network),
                    network => new DanglingStartRule(network),
                    network => new DanglingFinishRule(network),
                    network => new LeadRule(network),
                    network => new StartToFinishRule(network),
                    network => new RedundantLinkRule(network),
                    network => new HardConditionRule(network),
                    network => new NegativeFloatRule(network),
                    network => new RequiredDateRule(network),
                    network => new RequiredBeforeStartRule(network),
                    network => new BrokenLinkRule(network),
                    network => new OutOfSequenceRule(network),
                    network => new ForecastInThePastRule(network),
                    network => new ActualInTheFutureRule(network),
                    network => new LongActivityRule(network),
                    network => new UnnamedActivityRule(network),
                    network => new LevelOfEffortDrivesRule(network),
                ]
        ).Select(make => new GroundedRule(Network, of => make(of.Network.Audited))),
    ];

    private static AuditGround Network =>
        AsWhole
            .Whole(
                ActivityTable.Definition,
                LinkTable.Definition,
                ActivityStatusTable.Definition,
                CalendarTable.Definition,
                CalendarDayTable.Definition,
                PeriodTable.Definition
            )
            .Whole(
                E.Parent,
                E.Order,
                E.Code,
                E.Kind,
                PackageTable.Technique,
                PackageTable.Start,
                PackageTable.Finish,
                StatusTable.Package,
                StatusTable.Period,
                StatusTable.Started,
                StatusTable.Finished,
                StatusTable.Remaining
            )
            .Mentions(E.Name)
            .Settings("start", "status_date", "calendar", "progress")
            .Settings([.. AssessmentLimits.Keys.Keys]);
}
