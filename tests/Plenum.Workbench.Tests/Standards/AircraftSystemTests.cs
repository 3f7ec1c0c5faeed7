using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Exchange.Lists;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Standards;

namespace Plenum.Workbench.Tests.Standards;

/// <summary>
/// A published structure as a test of pasting. Source: MIL-STD-881F (13 May 2022), appendix A, aircraft systems, from a
/// public transcription (secondary text). The counts, the names and order of levels 2 and 3, and those of level 4 under
/// 1.2.2, 1.2.4 and 1.2.5 are from it. Names of level 4 under 1.8.1, 1.8.2 (from memory), 1.9, 1.11 and 1.12 are only
/// as good as memory; there the counts are the check.
/// </summary>
public class AircraftSystemTests
{
    // direct children of level 2 in order; of level 3 those that have any
    private static readonly int[] ChildrenOfLevel2 =
    [
        0,
        10,
        7,
        8,
        0,
        5,
        5,
        6,
        4,
        3,
        2,
        2,
        5,
        0,
        3,
        0,
    ];

    private static readonly (string Code, int Children)[] ChildrenOfLevel3 =
    [
        ("1.2.2", 6),
        ("1.2.4", 13),
        ("1.2.5", 14),
        ("1.8.1", 7),
        ("1.8.2", 6),
        ("1.9.1", 2),
        ("1.9.2", 2),
        ("1.11.1", 4),
        ("1.11.2", 4),
        ("1.12.1", 4),
        ("1.12.2", 4),
    ];

    private static readonly string List = Written();

    [Fact]
    public void The_structure_of_an_aircraft_system_is_pasted_as_an_indented_list()
    {
        var list = ListReader.Read(List);
        var tree = Pasted().Tree;

        Assert.Empty(list.Errors.Items);
        Assert.Empty(list.Warnings);
        Assert.Equal(ListForm.Spaces, list.Form);
        Assert.Equal((143, 4), (tree.Count, tree.Depth));
        Assert.Equal([1, 16, 60, 66], Enumerable.Range(1, 4).Select(level => Count(tree, level)));
    }

    [Fact]
    public void Its_second_level_stands_in_the_order_of_the_numbers()
    {
        var tree = Pasted().Tree;
        var second = Rows(tree, 2).ToList();

        Assert.Equal(
            Enumerable.Range(1, 16).Select(number => $"1.{number}"),
            second.Select(row => tree.Code(row))
        );
        Assert.Equal(ChildrenOfLevel2, second.Select(row => Children(tree, row)));
        Assert.Equal("Air Vehicle", tree.Name(second[1]));
        Assert.Equal("Data", tree.Name(second[9]));
    }

    [Fact]
    public void Its_fourth_level_has_the_published_counts()
    {
        var tree = Pasted().Tree;

        Assert.Equal(
            ChildrenOfLevel3,
            Rows(tree, 3)
                .Where(row => tree.HasChildren(row))
                .Select(row => (tree.Code(row), Children(tree, row)))
        );
    }

    [Theory]
    [InlineData("Data", "1.9.3", "1.10")]
    [InlineData("Test and Measurement Equipment", "1.11.1", "1.12.1")]
    public void Equal_names_under_different_parents_are_accepted(
        string name,
        string one,
        string other
    )
    {
        var tree = Pasted().Tree;

        Assert.Equal(name, tree.Name(tree.Elements.RowOfCode(one)));
        Assert.Equal(name, tree.Name(tree.Elements.RowOfCode(other)));
    }

    [Fact]
    public void Its_unnamed_rests_are_found_by_the_audit()
    {
        var found = ProjectAudit
            .Rules(Pasted())
            .Where(rule => rule.Name == "generic_name")
            .SelectMany(rule => rule.Run())
            .Select(finding => finding.Code);

        // Source: MIL-STD-881F appendices: what is called "other" is named before it is used
        Assert.Contains("1.2.10", found);
        Assert.Contains("1.6.5", found);
    }

    private static Project Pasted() =>
        EditTrial.Of(Project.Empty, new PasteListCommand(0, 0, List)).Next;

    private static string Written()
    {
        var tree = ShippedStandards.Find("aircraft-system")!.Tree;
        using var text = new StringWriter();
        ListWriter.Write(
            text,
            [
                .. Enumerable
                    .Range(0, tree.Count)
                    .Select(row => (tree.Level[row], "", tree.Name(row))),
            ],
            ListLayout.Indented
        );
        return text.ToString();
    }

    private static IEnumerable<int> Rows(ElementTree tree, int level) =>
        Enumerable.Range(0, tree.Count).Where(row => tree.Level[row] == level);

    private static int Count(ElementTree tree, int level) => Rows(tree, level).Count();

    private static int Children(ElementTree tree, int row) =>
        Enumerable.Range(0, tree.Count).Count(child => tree.Parent[child] == row);
}
