using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Parts;

namespace Plenum.Workbench.Tests.Parts;

/// <summary>Work sets are applied to parts, and edited.</summary>
public class WorkSetCommandTests
{
    [Fact]
    public void Applying_a_work_set_plans_every_missing_cell_with_its_share()
    {
        using var hall = new PumpHall();
        hall.Do(new ApplyWorkSetCommand([hall.Id("H.2.1")]));
        // 100.01 at 10, 50, 5, 20 and 15 %, running totals rounded: 10.00, 60.01, 65.01, 85.01, 100.01
        Assert.Equal(
            ["10.00", "50.01", "5.00", "20.00", "15.00"],
            Enumerable.Range(1, 5).Select(n => hall.Text($"H.2.1.{n}", ElementTable.Allotted))
        );
        // 70.01 h likewise: 7.00, 42.01, 45.51, 59.51, 70.01
        Assert.Equal(
            [
                "Design: 7 h",
                "Manufacture: 35.01 h",
                "Factory test: 3.5 h",
                "Erection: 14 h",
                "Commissioning: 10.5 h",
            ],
            hall.Row("H.2.1")
        );
        Assert.Equal(
            [
                "H.2.1.1-A H.2.1.2-A",
                "H.2.1.2-A H.2.1.3-A",
                "H.2.1.3-A H.2.1.4-A",
                "H.2.1.4-A H.2.1.5-A",
            ],
            hall.Lines(LinkTable.Definition, LinkTable.From, LinkTable.To).Order()
        );
        Assert.Equal(
            ["0", "0"],
            new[] { hall.Now.Totals, hall.Now.HourTotals }.Select(totals =>
                totals
                    .Gap[hall.Now.Tree.Elements.RowOfCode("H.2.1")]
                    .ToString(CultureInfo.InvariantCulture)
            )
        );
    }

    [Fact]
    public void What_is_decided_stays_when_a_work_set_is_applied()
    {
        using var hall = new PumpHall();
        hall.Do(new ApplyWorkSetCommand([hall.Id("H.1.2"), hall.Id("H.1.1")]));
        Assert.Equal(["Design: 0 h", "Erection: stands on the ground"], hall.Row("H.1.2"));
        Assert.Equal("Design: 30 h", hall.Row("H.1.1")[0]);
        Assert.DoesNotContain(
            hall.Row("H.1.1"),
            line => line.EndsWith("missing", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Applying_work_sets_leaves_no_missing_cell_and_divides_exactly_and_is_taken_back_whole()
    {
        for (var seed = 0; seed < 25; seed++)
        {
            var random = new Random(seed);
            using var hall = new PumpHall(RandomSets(random, out var shares));
            var allotted = random.NextInt64(1, 1_000_000_000_00);
            var hours = random.NextInt64(1, 1_000_000_00);
            var part = hall.Id("H.2.1");
            hall.Do(
                new SetCellsCommand(
                    "allot",
                    [
                        Cell("allotted", allotted, hall.Text("H.2.1", ElementTable.Allotted)),
                        Cell(
                            "allotted_hours",
                            hours,
                            hall.Text("H.2.1", ElementTable.AllottedHours)
                        ),
                    ]
                )
            );
            var before = hall.Content();
            hall.Do(new ApplyWorkSetCommand([part]));
            var after = hall.Content();
            Assert.DoesNotContain(
                hall.Row("H.2.1"),
                line => line.EndsWith("missing", StringComparison.Ordinal)
            );
            Assert.Equal(Rounded(allotted, shares), Sum(hall, ElementTable.Allotted));
            Assert.Equal(Rounded(hours, shares), Sum(hall, ElementTable.AllottedHours));
            hall.Open.Undo("planner");
            Assert.Equal(before, hall.Content());
            hall.Open.Redo("planner");
            Assert.Equal(after, hall.Content());

            CellText Cell(string column, long hundredths, string? seen) =>
                new("elements", part, column, Text(hundredths), seen);
        }
    }

    [Fact]
    public void A_type_is_given_to_many_parts_at_once()
    {
        using var hall = new PumpHall();
        int[] parts = [hall.Id("H.2.3"), hall.Id("H.2.4")];
        hall.Do(new SetPartTypeCommand(parts, hall.Type("tank")));
        Assert.Equal(["Design: missing", "Erection: missing"], hall.Row("H.2.3"));
        hall.Do(new SetPartTypeCommand(parts, 0));
        Assert.Null(hall.Text("H.2.4", ElementTable.PartType));
        hall.Refuses(
            new SetPartTypeCommand([hall.Id("H.2.3"), hall.Id("H.1.1.1")], hall.Type("tank")),
            "H.1.1.1 Feed pump, design carries out the activity Design of a part and is no part itself."
        );
        hall.Refuses(
            new SetPartTypeCommand(parts, 999),
            "This part type is no longer there; somebody has removed it."
        );
    }

    [Fact]
    public void Renaming_an_activity_takes_packages_reasons_and_order_along()
    {
        using var hall = new PumpHall();
        hall.Do(new RuleOutCellsCommand([hall.Cell("H.2.1", "Factory test")], "on site"));
        hall.Do(new RenameActivityCommand(SetRow(hall, "pump", "Factory test"), "Works test"));
        Assert.Contains("Works test: on site", hall.Row("H.2.1"));
        Assert.Contains("Works test: 88 h", hall.Row("H.1.1"));
        Assert.Contains(
            "Erection Works test",
            hall.Lines(WorkSetTable.Definition, WorkSetTable.Activity, WorkSetTable.After)
        );
    }

    [Fact]
    public void Activities_are_added_moved_and_taken_out_of_a_work_set()
    {
        using var hall = new PumpHall();
        hall.Do(new AddActivityCommand(hall.Type("tank"), "Coating", "construction"));
        Assert.Equal(3, hall.Row("H.2.2").Count);
        hall.Do(new MoveActivityCommand(SetRow(hall, "tank", "Coating"), Up: true));
        Assert.Equal(
            ["Design: missing", "Coating: missing", "Erection: missing"],
            hall.Row("H.2.2")
        );
        hall.Do(new RemoveActivityCommand(SetRow(hall, "pump", "Factory test")));
        Assert.Contains(
            "Erection Manufacture",
            hall.Lines(WorkSetTable.Definition, WorkSetTable.Activity, WorkSetTable.After)
        );
        hall.Refuses(
            new MoveActivityCommand(SetRow(hall, "tank", "Design"), Up: true),
            "Design is the first activity of its work set already."
        );
        hall.Refuses(
            new AddActivityCommand(hall.Type("tank"), "Coating", null),
            "tank, Coating stands in work_sets already"
        );
        hall.Refuses(
            new AddActivityCommand(hall.Type("tank"), " ", null),
            "activity is empty, a code without spaces at its ends expected"
        );
    }

    [Theory]
    [InlineData(
        "share",
        "lots",
        "share: \"lots\" found, a number with a decimal point, such as 12.5, not below 0, at most 28 digits expected"
    )]
    [InlineData(
        "duration",
        "-1",
        "duration: \"-1\" found, a whole number from 0 to 100000 expected"
    )]
    [InlineData(
        "technique",
        "half",
        "technique: \"half\" found, 0/100, 50/50, any a/b that adds to 100, milestones, percent, units, items, loe or apportioned expected"
    )]
    [InlineData(
        "after",
        "Painting",
        "\"Painting\" is no activity of this work set. Expected: activities of the same work set, separated by semicolons"
    )]
    public void A_wrong_field_of_a_work_set_is_refused(string column, string text, string message)
    {
        using var hall = new PumpHall();
        var id = SetRow(hall, "tank", "Erection");
        var seen = new Core.ProjectText(hall.Now).Of(
            hall.Now[WorkSetTable.Definition],
            hall.Now[WorkSetTable.Definition].RowOf(id),
            WorkSetTable.Definition.Columns.First(known => known.Name == column)
        );
        hall.Refuses(
            new SetCellCommand(new CellText("work_sets", id, column, text, seen)),
            message
        );
    }

    private static int SetRow(PumpHall hall, string type, string activity)
    {
        var table = hall.Now[WorkSetTable.Definition];
        var row = Enumerable
            .Range(0, table.Count)
            .First(row =>
                table.Ints(WorkSetTable.PartType)[row] == hall.Type(type)
                && table.Texts(WorkSetTable.Activity)[row] == activity
            );
        return table.Ids[row];
    }

    private static string RandomSets(Random random, out decimal sum)
    {
        sum = 0;
        var count = random.Next(1, 15);
        var lines = new List<string>();
        for (var n = 1; n <= count; n++)
        {
            var share = random.Next(0, 1001) / 100m;
            sum += share;
            lines.Add(
                $"pump,Step {n},,{n},{share.ToString(CultureInfo.InvariantCulture)},{random.Next(0, 40)},,"
                    + (n > 1 ? $"Step {random.Next(1, n)}," : ",")
            );
        }

        return string.Join('\n', lines) + "\n";
    }

    private static long Rounded(long amount, decimal percent) =>
        (long)Math.Round(amount * percent / 100, MidpointRounding.AwayFromZero);

    private static long Sum(PumpHall hall, ColumnDefinition column)
    {
        var tree = hall.Now.Tree;
        var part = tree.Elements.RowOfCode("H.2.1");
        var sum = 0L;
        foreach (var amount in tree.Elements.Longs(column)[(part + 1)..tree.SubtreeEnd[part]])
        {
            sum += amount;
        }

        return sum;
    }

    private static string Text(long hundredths) =>
        (hundredths / 100m).ToString(CultureInfo.InvariantCulture);
}
