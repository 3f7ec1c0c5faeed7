using Plenum.Core.Baseline;
using Plenum.Core.Baseline.Audit;
using Plenum.Core.Breakdown;
using Plenum.Core.Breakdown.Audit;
using Plenum.Core.Breakdown.Splits;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;
using Plenum.Core.People.Audit;
using Plenum.Core.Scope;
using static Plenum.Core.AuditGround;
using static Plenum.Core.AuditReach;
using E = Plenum.Core.Breakdown.ElementTable;

namespace Plenum.Core;

/// <summary>All rules of the audit with their grounds, in the order of the job.</summary>
internal static partial class GroundedRules
{
    /// <summary>What decides the order of sisters.</summary>
    private static readonly ColumnDefinition[] Order = [E.Parent, E.Order, E.Code];

    private static readonly TableDefinition[] Traced =
    [
        ScopeTable.Definition,
        ScopePhraseTable.Definition,
        TraceTable.Definition,
    ];

    public static readonly GroundedRule[] OfScope =
    [
        new(AsWhole.Whole(Traced), of => new NotCoveredRule(of.Coverage, "deliverable")),
        new(AsWhole.Whole(Traced), of => new PartlyCoveredRule(of.Coverage)),
        new(AsWhole.Whole(Traced), of => new NotCoveredRule(of.Coverage, "requirement")),
        new(AsWhole.Whole(Traced), of => new ExclusionRule(of.Coverage)),
        new(
            AtElements.Whole(Traced).Whole(E.Parent),
            of => new NobodyAskedRule(of.Tree, of.Coverage)
        ),
    ];

    public static readonly GroundedRule[] OfBreakdown =
    [
        new(Amounts(E.Allotted), of => new GapRule(of.Tree, of.Project.Totals, of.Money, "money")),
        new(
            Amounts(E.Allotted),
            of => new MoreThanTheWholeRule(of.Tree, of.Project.Totals, of.Money, "money")
        ),
        new(
            Amounts(E.AllottedHours),
            of => new GapRule(of.Tree, of.Project.HourTotals, AuditData.Hours, "hours")
        ),
        new(
            Amounts(E.AllottedHours),
            of => new MoreThanTheWholeRule(of.Tree, of.Project.HourTotals, AuditData.Hours, "hours")
        ),
        new(Quantities, of => new QuantityRule(of.Tree, more: false)),
        new(Quantities, of => new QuantityRule(of.Tree, more: true)),
        new(Amounts(E.Allotted), of => new NotBrokenDownRule(of.Tree, of.Project.Totals)),
        new(AtElements.Near(Children, [.. Order, E.Name]), of => new SingleChildRule(of.Tree)),
        new(
            AsWhole.Whole(E.Parent, E.Code).Settings("audit_levels_least", "audit_levels_most"),
            of => new DepthRule(of.Tree, of.Thresholds)
        ),
        new(Splits, of => new TwoLogicsRule(of.Tree, of.Readings)),
        new(Splits, of => new SplitDiffersRule(of.Tree, of.Readings)),
        new(
            AtElements.Own(E.Split).Near(Children, E.Parent),
            of => new SplitNotDeclaredRule(of.Tree)
        ),
        new(
            Activities.Own(E.PartType).Whole(WorkSetTable.Definition),
            of => new MissingActivityRule(of.Tree, of.Activities)
        ),
        new(Activities, of => new PlannedNotNeededRule(of.Tree, of.Activities)),
        new(
            AtElements
                .OwnRows(NotNeededTable.Definition)
                .Near(Kin, [.. Order, E.Name, E.PartType, E.Activity, E.Kind])
                .Near(Kin, [.. BudgetTable.Definition.Columns])
                .Settings("audit_sisters_share", "audit_sisters_hours"),
            of => new SistersRule(
                of.Tree,
                new Sisters(of.Tree),
                of.Project.HourTotals.Budget,
                of.Activities.IsRuledOut,
                of.Thresholds
            )
        ),
        new(
            Words(AtElements).Near(All, E.Parent, E.Name),
            of => new ManagementMissingRule(of.Tree, of.Names)
        ),
        new(
            Words(AtElements).Near(Above, E.Parent).Near(Family, E.Parent),
            of => new SoftwareApartRule(of.Tree, of.Names)
        ),
        new(AtElements.Near(Family, [.. Order, E.Name]), of => new DuplicateNameRule(of.Tree)),
        new(Words(AtElements).Near(Parent, E.Name), of => new GenericNameRule(of.Tree, of.Names)),
        new(
            Words(AtElements).Near(Parent, E.Name).Whole(PersonTable.Name),
            of => new NotAPartRule(of.Tree, of.Names, of.IsPerson)
        ),
        new(Words(AtElements).Near(Parent, E.Name), of => new VerbNameRule(of.Tree, of.Names)),
        new(AtElements.Settings("name"), of => new RootNameRule(of.Tree, of.Project.Settings.Name)),
        new(
            AtElements.Near(Above, E.Parent).Near(Parent, E.Code).Settings("code_mask"),
            of => new CodeRule(of.Tree, of.Project.Settings.CodeMask)
        ),
        new(AtElements.Own(E.Output, E.Acceptance), of => new DictionaryRule(of.Tree)),
        new(AtElements.Own(E.Description, E.Output), of => new DictionaryRepeatsRule(of.Tree)),
        new(
            AsWhole.Whole(RegisterTable.Definition),
            of => new InterfaceRule(of.Project[RegisterTable.Definition])
        ),
    ];

    public static readonly GroundedRule[] OfPeople =
    [
        new(
            AsWhole.Whole(AccountTable.Definition).Whole(Order),
            of => new AccountOverlapRule(of.Tree, of.Project.Placement)
        ),
        new(Placed, of => new PackageWithoutAccountRule(of.Tree, of.Project.Placement)),
        new(Placed, of => new AccountUnitRule(of.Tree, of.Project.Placement)),
        new(
            AtElements.Own(E.Kind).Near(Children, E.Parent).Near(Above, E.Person, E.Parent),
            of => new PackageWithoutPersonRule(of.Tree)
        ),
        new(
            AsWhole
                .Whole(BudgetTable.Definition, AccountTable.Definition)
                .Placement()
                .Settings("currency", "audit_account_packages", "audit_account_share"),
            of => new AccountSizeRule(of.Baseline, of.Project.Placement, of.Thresholds, of.Money)
        ),
    ];

    private static AuditGround Quantities =>
        AtElements
            .Own(E.Quantity, E.QuantityUnit)
            .Near(Children, E.Parent, E.Quantity, E.QuantityUnit);

    private static AuditGround Splits =>
        Words(AtElements)
            .Own(E.Split)
            .Near(Children, [.. Order, E.Name, E.PartType, E.Activity, E.Unit])
            .Whole(UnitTable.Name, PartTypeTable.PartType);

    private static AuditGround Activities =>
        AtElements
            .OwnRows(NotNeededTable.Definition)
            .Own(E.Activity)
            .Near(Below, E.Parent, E.Activity);

    private static AuditGround Placed =>
        AtElements
            .Own(E.Kind)
            .OwnRows(PackageTable.Definition)
            .Near(Children, E.Parent)
            .Near(Above, E.Unit, E.Parent)
            .Whole(AccountTable.Definition);

    /// <summary>What is allotted to an element and its parts, and the budgets below.</summary>
    private static AuditGround Amounts(ColumnDefinition allotted) =>
        AtElements
            .Own(allotted, E.Kind)
            .OwnRows(BudgetTable.Definition)
            .Near(Children, E.Parent)
            .Near(Below, allotted, E.Parent, E.Kind)
            .Near(Below, [.. BudgetTable.Definition.Columns])
            .Settings("currency");

    private static AuditGround Words(AuditGround ground) =>
        ground.Whole(SplitWordTable.Definition).Settings("language");
}
