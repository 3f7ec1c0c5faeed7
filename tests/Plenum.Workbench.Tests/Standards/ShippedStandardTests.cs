using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Tests.Standards;

/// <summary>The standard breakdowns that come with the program are sound by our own audit.</summary>
public class ShippedStandardTests
{
    public static TheoryData<string> Plants =>
        ["water-treatment-plant", "substation", "pumping-station"];

    [Theory]
    [MemberData(nameof(Plants))]
    public void A_plant_has_at_least_150_elements_each_with_output_and_acceptance(string key)
    {
        var tree = ShippedStandards.Find(key)!.Tree;

        Assert.True(tree.Count >= 150, $"{key} has {tree.Count} elements");
        for (var row = 0; row < tree.Count; row++)
        {
            Assert.NotNull(tree.Elements.Texts(ElementTable.Output)[row]);
            Assert.NotNull(tree.Elements.Texts(ElementTable.Acceptance)[row]);
            Assert.Equal(
                tree.HasChildren(row),
                tree.Elements.Texts(ElementTable.Split)[row] is not null
            );
        }
    }

    [Theory]
    [MemberData(nameof(Plants))]
    public void A_plant_is_engineered_bought_built_and_commissioned(string key)
    {
        var project = ShippedStandards.Find(key)!;
        var sets = project[WorkSetTable.Definition];
        var facets = sets.Texts(WorkSetTable.Facet).ToArray();
        var types = sets.Ints(WorkSetTable.PartType).ToArray();
        var shares = sets.Decimals(WorkSetTable.Share).ToArray();
        foreach (var set in Enumerable.Range(0, sets.Count).GroupBy(row => types[row]))
        {
            Assert.Equal(
                ["engineering", "procurement", "construction", "commissioning"],
                set.Select(row => facets[row])
            );
            Assert.Equal(100, set.Sum(row => shares[row]));
        }
    }

    [Theory]
    [MemberData(nameof(Plants))]
    public void A_plant_leaves_the_audit_of_its_structure_nothing_to_say(string key)
    {
        var findings = ProjectAudit
            .Rules(ShippedStandards.Find(key)!)
            .SelectMany(rule => rule.Run())
            .Where(finding => !Later.Contains(finding.Rule))
            .Select(finding =>
                $"{finding.Severity} {finding.Rule} {finding.Code}: {finding.Message}"
            );

        Assert.Empty(findings);
    }

    // a standard breakdown has neither people nor money: what these rules ask for comes with the project
    private static readonly string[] Later =
    [
        "package_without_account",
        "package_without_budget",
        "package_without_person",
    ];
}
