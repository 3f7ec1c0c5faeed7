using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.Network;
using Plenum.Core.Scope;

namespace Plenum.Browser.Tests;

/// <summary>
/// A small plant from an empty project, by keyboard alone: from the pasted statement to an account for every package. The
/// keys are counted, and set beside those that the same rows would take in a spreadsheet.
/// </summary>
public sealed class BuildingTests(Site site)
{
    private const string Statement = """
        1 Pumping station
        1.1 An intake with a screen and a gate.
        1.2 A pump hall with two pumps.
        1.3 An outfall that ends with a diffuser.
        2 Exclusions
        2.1 The river wall.
        """;

    [Fact]
    public async Task A_small_plant_is_built_from_nothing_without_a_pointer()
    {
        var name = site.BeginEmpty("building");
        await using var reader = await Reader.At(site, $"/p/{name}/breakdown");
        var typist = new Typist(reader);
        try
        {
            await Scope(reader, typist);
            await Parts(reader, typist);
            await Sets(reader, typist);
            await Matrix(reader, typist);
            await People(reader, typist);
            await InCharge(reader, typist);
        }
        catch
        {
            await reader.Picture("where-it-stopped");
            throw;
        }

        var built = site.Now(name);
        var packages = built.Tree.PackageCount;
        Assert.Equal(23, packages);
        Assert.Equal(1 + 3 + 6 + packages, built.Tree.Count);
        Assert.Equal((24, 24), (built.ActivityMatrix.DecidedCount, built.ActivityMatrix.CellCount));
        Assert.All(
            Enumerable.Range(0, packages),
            package => Assert.True(built.Placement.AccountOfPackage[package] >= 0)
        );
        Assert.All(
            Enumerable.Range(0, packages),
            package => Assert.True(Person(built, built.Tree.PackageRows[package]) > 0)
        );

        var inCells = KeysOfCells(built, withFormulas: true);
        Tell(typist, KeysOfCells(built, withFormulas: false), inCells);
        Assert.InRange(typist.Keys, 1, inCells);
    }

    /// <summary>The statement is pasted, and each clause gets the part that answers it.</summary>
    private static async Task Scope(Reader reader, Typist typist)
    {
        await reader.By("#way-scope").WaitForAsync();
        await typist.Press("1");
        await reader.By("#paste-statement").WaitForAsync();
        await typist.Press("p");
        await typist.On("#paste-text");
        await typist.Paste(Statement);
        await reader.By("#take-items:not([disabled])").WaitForAsync();
        await typist.To("#take-items");
        await typist.Press("Enter");
        await reader.By(".item.picked", "Pumping station").WaitForAsync();
        await typist.Done("scope pasted");

        var first = true;
        foreach (
            var (words, part) in ((string, string)[])
                [
                    ("Pumping", "Pumping station"),
                    ("intake", "Intake"),
                    ("pump hall", "Pump hall"),
                    ("outfall", "Outfall"),
                ]
        )
        {
            if (!first)
            {
                await typist.Press("j");
            }

            first = false;
            await reader.By(".item.picked", words).WaitForAsync();
            await typist.Press("a");
            await typist.On("#item-words");
            await typist.To("#part-name");
            await typist.Type(part);
            await typist.Press("Enter");
            await reader.By(".card", "answers all of it").WaitForAsync();
        }

        await typist.Done("clauses answered");
    }

    /// <summary>The parts of the parts are typed in the outline, and every split gets its logic.</summary>
    private static async Task Parts(Reader reader, Typist typist)
    {
        await typist.Press("Alt+2");
        await typist.To("#outline [data-rowlink]");
        var last = "";
        foreach (
            var (part, parts) in ((string, string[])[])
                [
                    ("Intake", ["Inlet screen", "Inlet gate"]),
                    ("Pump hall", ["Pump A", "Pump B"]),
                    ("Outfall", ["Discharge pipe", "Diffuser"]),
                ]
        )
        {
            // past the parts of the one before
            await typist.Press("ArrowDown", last.Length == 0 ? 1 : 3);
            await typist.OnRow(part);
            await typist.Press("Shift+Enter");
            await typist.On("#entry-text");
            await typist.Enter(parts);
            await typist.Press("Escape");
            await typist.OnRow(parts[^1]);
            await typist.Press("ArrowLeft");
            await typist.OnRow(part);
            await Split(reader, typist, part);
            last = part;
        }

        await typist.Press("Home");
        await typist.OnRow("Pumping station");
        await Split(reader, typist, "Pumping station");
        await typist.Done("parts typed");
    }

    /// <summary>The logic of the element that has the focus: that of physical parts, which stands there first.</summary>
    private static async Task Split(Reader reader, Typist typist, string part)
    {
        await typist.Press("l");
        await typist.On("input[value=part]");
        await typist.Press("Enter");
        await reader
            .By("#outline tr[data-row]", part)
            .Locator("td", new() { HasText = "physical part" })
            .WaitForAsync();
        await typist.OnRow(part);
    }

    /// <summary>A part type, and the activities that any such part needs.</summary>
    private static async Task Sets(Reader reader, Typist typist)
    {
        await typist.Press("Alt+2");
        await reader.By("#make-types").WaitForAsync();
        await typist.Press("1");
        await typist.To("#new-type");
        await typist.Type("Equipment");
        await typist.Press("Enter");
        await typist.On("#new-activity");
        foreach (
            var (activity, facet) in ((string, string)[])
                [
                    ("Design", "engineering"),
                    ("Purchase", "procurement"),
                    ("Erection", "construction"),
                    ("Test run", "commissioning"),
                ]
        )
        {
            await typist.Type(activity);
            await typist.Press("Tab");
            await typist.Type(facet);
            await typist.Press("Enter");
            await reader.By("#set td", activity).WaitForAsync();
            await typist.On("#new-activity");
        }

        // share, days and what comes before, column by column
        await typist.Press("Shift+Tab");
        await typist.On("#set");
        await typist.Press("ArrowRight", 2);
        await typist.Enter(["10", "45", "30", "15"]);
        await typist.Press("ArrowUp", 3);
        await typist.Press("ArrowRight");
        await typist.Enter(["15", "60", "10", "5"]);
        await typist.Press("ArrowUp", 2);
        await typist.Press("ArrowRight", 2);
        await typist.Enter(["Design", "Purchase", "Erection"]);
        await reader.By("#set td[data-text=Erection][data-col='5']").WaitForAsync();
        await typist.Done("work set written");
    }

    /// <summary>The type is given to all parts, one cell is ruled out, and the work set is applied to the rest.</summary>
    private static async Task Matrix(Reader reader, Typist typist)
    {
        await typist.Press("Alt+2");
        await reader.By("#outline").WaitForAsync();
        await typist.Press("Alt+2");
        await typist.To("#parts");
        await reader.By("#parts .active", "Inlet screen").WaitForAsync();
        await typist.Press("Control+Shift+ArrowDown");
        await reader.By("#parts .active", "Diffuser").WaitForAsync();
        await typist.Press("t");
        await typist.On("#find-type");
        await typist.Type("e");
        await typist.Press("Enter");
        await typist.On("#parts");
        await reader.By("#parts td.active.absent").WaitForAsync();
        await typist.Done("types given");

        await typist.Press("ArrowUp");
        await typist.Press("End");
        await reader.By("#cell-title", "Test run of Discharge pipe").WaitForAsync();
        await typist.Press("x");
        await typist.On("#reason");
        await typist.Type("with the pumps");
        await typist.Press("Enter");
        await typist.On("#parts");
        await reader.By("td.active.ruledout", "with the pumps").WaitForAsync();
        await typist.Press("Control+Home");
        await typist.Press("Control+Shift+End");
        await reader.By("td.active", "").WaitForAsync();
        await typist.Press("w");
        await reader.By("h1.reading", "All 24 cells").WaitForAsync();
        await typist.Done("cells decided");
    }

    /// <summary>Units and people, and an account with its manager for every part.</summary>
    private static async Task People(Reader reader, Typist typist)
    {
        await typist.Press("Alt+3");
        await reader.By(".places [aria-current]", "Plant and organisation").WaitForAsync();
        await typist.Press("Alt+3");
        await reader.By(".places [aria-current]", "Packages").WaitForAsync();
        await typist.Press("Alt+3");
        await typist.To("#new-unit");
        await typist.Enter(["Works", "Controls"]);
        await reader.By("#units a", "CON").WaitForAsync();
        await typist.To("#new-person");
        await typist.Enter(["Ann Dorn", "Ben Kerr"]);
        await reader.By("#people a", "b.kerr").WaitForAsync();
        await typist.Done("people named");

        await typist.Press("Alt+3");
        await typist.To("#work [data-rowlink]");
        await typist.Press("ArrowDown");
        await typist.OnRow("Inlet screen");
        await typist.Press("ArrowRight", 2);
        await typist.OnRow("Inlet screen, Works");
        foreach (
            var (part, manager) in ((string, string)[])
                [
                    ("Inlet screen", "dorn"),
                    ("Inlet gate", "dorn"),
                    ("Pump A", "kerr"),
                    ("Pump B", "kerr"),
                    ("Discharge pipe", "dorn"),
                    ("Diffuser", "dorn"),
                ]
        )
        {
            if (part != "Inlet screen")
            {
                await typist.Press("ArrowDown");
            }

            await typist.OnRow($"{part}, Works");
            await typist.Press("Enter");
            await typist.On("#manager");
            await typist.Type(manager);
            await reader.By("#manager-hits li[aria-selected=true]").WaitForAsync();
            await typist.Press("Enter");
            await typist.OnRow($"{part}, ");
            await typist.On("[data-account$=WOR]");
        }

        await reader.By("h1.reading", "6 control accounts").WaitForAsync();
        await typist.Done("accounts placed");
    }

    /// <summary>One person for the whole, another for a part of it: everything below inherits.</summary>
    private static async Task InCharge(Reader reader, Typist typist)
    {
        await typist.Press("Alt+2");
        await typist.To("#outline [data-rowlink]");
        await typist.Press("Home");
        await typist.OnRow("Pumping station");
        foreach (
            var (down, part, person) in ((int, string, string)[])
                [(0, "Pumping station", "Ann"), (4, "Pump hall", "Ben")]
        )
        {
            if (down > 0)
            {
                await typist.Press("Shift+F6");
                await typist.To("#outline [data-rowlink]");
                await typist.Press("ArrowDown", down);
                await typist.OnRow(part);
            }

            await reader.By("#side h2", part).WaitForAsync();
            await typist.Press("F6");
            await typist.On("#side");
            await typist.To("#field-person");
            await typist.Type(person);
            await typist.Press("Tab");
            await reader
                .By("#outline tr[data-row]", part)
                .Locator("td", new() { HasText = person[..1] + ". " })
                .WaitForAsync();
        }

        await typist.Done("people in charge");
    }

    /// <summary>Id of the person in charge of an element, its own or inherited; 0 if there is none.</summary>
    private static int Person(Project project, int row)
    {
        for (var at = row; at >= 0; at = project.Tree.Parent[at])
        {
            if (Cell.IsGiven(project.Tree.Elements.Ints(ElementTable.Person)[at]))
            {
                return project.Tree.Elements.Ints(ElementTable.Person)[at];
            }
        }

        return 0;
    }

    /// <summary>
    /// The keys that the same rows take in a spreadsheet: a cell is typed with its letters and one key to go on; one that is
    /// like the cell above it is filled down with one key; codes, orders and what is the same for all cost nothing, and so
    /// does every sheet, heading and border. The statement is pasted with one key there too.
    /// </summary>
    /// <param name="project">What was built.</param>
    /// <param name="withFormulas">
    /// Whoever works there writes formulas too, at no cost: for parents, for names that are made of part and activity, for
    /// the links of the packages, and for the shares of a part.
    /// </param>
    private static int KeysOfCells(Project project, bool withFormulas)
    {
        var words = new ProjectText(project);
        var keys = 1;
        foreach (
            var table in project.Tables.Where(table =>
                table.Definition != ScopeTable.Definition
                && table.Definition != ProjectTable.Definition
            )
        )
        {
            foreach (var column in table.Definition.Columns.Where(column => !IsGiven(column)))
            {
                if (
                    withFormulas
                    && (
                        column == ElementTable.Parent
                        || table.Definition == LinkTable.Definition
                        || table.Definition == ActivityTable.Definition
                    )
                )
                {
                    continue;
                }

                string? above = null;
                for (var row = 0; row < table.Count; row++)
                {
                    var text = words.Of(table, row, column);
                    var isMade =
                        withFormulas
                        && column == ElementTable.Name
                        && project.Tree.PackageOfRow[row] >= 0;
                    keys +=
                        string.IsNullOrEmpty(text) || isMade ? 0
                        : text == above ? 1
                        : text.Length + 1;
                    above = text;
                }
            }
        }

        return keys;
    }

    private static bool IsGiven(ColumnDefinition column) =>
        column == ElementTable.Code
        || column == ElementTable.Order
        || column == WorkSetTable.Order
        || column.Default is not null;

    /// <summary>Written beside the pictures.</summary>
    private static void Tell(Typist typist, int inCells, int withFormulas)
    {
        var lines = typist.Steps.Select(step =>
            string.Create(CultureInfo.InvariantCulture, $"{step.Step}: {step.Keys} keys")
        );
        var sum = string.Create(
            CultureInfo.InvariantCulture,
            $"all: {typist.Keys} keys; the same rows in a spreadsheet: {inCells}, with formulas {withFormulas}"
        );
        File.WriteAllLines(
            Path.Combine(AppContext.BaseDirectory, "pictures", "keys.txt"),
            [.. lines, sum]
        );
    }
}
