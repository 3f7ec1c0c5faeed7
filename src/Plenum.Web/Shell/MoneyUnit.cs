using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Workbench.Words;

namespace Plenum.Web.Shell;

/// <summary>The one unit of money of a project's sheets.</summary>
public static class MoneyUnit
{
    /// <summary>By the size of the whole project's budget.</summary>
    public static Amounts Of(Project project) =>
        new(
            project.Settings.Currency.ToMajorUnits(
                project.Tree.Count == 0
                    ? 0
                    : project.Totals.Budget[0]
                        + BudgetLedger.Undistributed(project[PostingTable.Definition])
            ),
            project.Settings.Currency
        );
}
