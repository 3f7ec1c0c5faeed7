namespace Plenum.Oracle.Tests;

/// <summary>Who is in which account and which rows a cut has; all projects constructed.</summary>
public sealed class CutsTests
{
    /// <summary>
    /// R with B1 (unit U1) and B2. On B1 accounts CA-10 of U1 and CA-9 of U2; A1 and A2 (unit U2) below B1, A3 below
    /// B2, A4 below B2 names nothing. U2 belongs to U1.
    /// </summary>
    private static Small Example() =>
        new Small()
            .Add("units", ("unit", "U2"), ("parent", "U1"))
            .Add("units", ("unit", "U1"), ("parent", ""))
            .Branch("B1", unit: "U1")
            .Branch("B2")
            .Account("CA-10", "B1", "U1")
            .Account("CA-9", "B1", "U2")
            .Package("A1", "percent", "1", 1, 28, parent: "B1")
            .Package("A2", "percent", "2", 1, 28, parent: "B1", unit: "U2")
            .Package("A3", "percent", "4", 1, 28, parent: "B2")
            .Package("A4", "percent", "8", 1, 28, parent: "B2", unit: "U2")
            .Cost("CA-9", 1, "16")
            .Add(
                "postings",
                ("change", "1"),
                ("posting", "1"),
                ("from", "contract"),
                ("to", "undistributed"),
                ("amount", "64")
            )
            .Add(
                "postings",
                ("change", "1"),
                ("posting", "2"),
                ("from", "undistributed"),
                ("to", "CA-9"),
                ("amount", "33")
            )
            .Add(
                "postings",
                ("change", "1"),
                ("posting", "3"),
                ("from", "reserve"),
                ("to", "allowances"),
                ("amount", "1")
            );

    [Fact]
    public void Package_is_in_the_account_of_its_unit_at_the_nearest_element_with_accounts()
    {
        var small = Example();
        Assert.Equal("*total CA-9 CA-10 *no_account *undistributed", small.Codes(1, "account"));
        Assert.Equal(200, small.At(1, "CA-9", "account").Bac);
        Assert.Equal(100, small.At(1, "CA-10", "account").Bac);
        Assert.Equal(1200, small.At(1, "*no_account", "account").Bac);
        Assert.Equal(1600, small.At(1, "CA-9", "account").Ac);
        Assert.Equal(1600 + 200, small.At(1, "CA-9", "account").Eac);
    }

    [Fact]
    public void Only_account_of_an_element_takes_packages_of_any_unit_and_several_take_none()
    {
        var single = new Small()
            .Add("units", ("unit", "U"))
            .Add("units", ("unit", "V"))
            .Account("X", "R", "U");
        Assert.Equal(
            100,
            single.Package("A", "percent", "1", 1, 28, unit: "V").At(1, "X", "account").Bac
        );
        Assert.Equal(
            100,
            single
                .Add("units", ("unit", "W"))
                .Account("Y", "R", "W")
                .At(1, "*no_account", "account")
                .Bac
        );
    }

    [Fact]
    public void Nearest_element_with_accounts_decides_even_if_a_higher_one_has_the_unit()
    {
        var small = new Small()
            .Add("units", ("unit", "U"))
            .Add("units", ("unit", "V"))
            .Branch("B")
            .Account("X", "R", "U")
            .Account("Y", "B", "V")
            .Package("A", "percent", "1", 1, 28, parent: "B", unit: "U");
        Assert.Equal(100, small.At(1, "Y", "account").Bac);
    }

    [Fact]
    public void Named_account_is_taken_before_the_nearest()
    {
        var small = new Small()
            .Add("units", ("unit", "U"))
            .Branch("B")
            .Account("X", "R", "U")
            .Account("Y", "B", "U")
            .Package("A", "percent", "1", 1, 28, parent: "B", account: "X");
        Assert.Equal(100, small.At(1, "X", "account").Bac);
        Assert.Equal(0, small.At(1, "Y", "account").Bac);
    }

    [Fact]
    public void Unit_holds_its_accounts_and_those_of_the_units_below()
    {
        var small = Example();
        Assert.Equal("*total U1 U2 *no_account *undistributed", small.Codes(1, "unit"));
        Assert.Equal(300, small.At(1, "U1", "unit").Bac);
        Assert.Equal(200, small.At(1, "U2", "unit").Bac);
        Assert.Equal(1600, small.At(1, "U1", "unit").Ac);
    }

    [Fact]
    public void Undistributed_budget_and_allowances_are_in_the_total_alone()
    {
        var small = Example();
        Assert.Equal(1500 + 3200, small.At(1).Bac);
        Assert.Equal(1500 + 3200 + 1600, small.At(1).Eac);
        Assert.Equal(3200, small.At(1, "*undistributed").Etc);
        Assert.Equal(1500, small.At(1, "R", "element").Bac);
        Assert.Equal(1600, small.At(1, "R", "element").Ac);
    }

    [Fact]
    public void Level_gives_the_elements_of_that_level_and_leaves_above_it_and_charges_higher_up_apart()
    {
        var small = Example().Package("A0", "percent", "1", 1, 28);
        Assert.Equal("*total A0 B1 B2 *undistributed", small.Codes(1, "element", 2));
        Assert.Equal(
            "*total A0 A1 A2 A3 A4 *undistributed *account_charges",
            small.Codes(1, "element", 3)
        );
        Assert.Equal(1600, small.At(1, "*account_charges", "element", 3).Eac);
        Assert.Equal(1600, small.At(1, "B1", "element", 2).Ac);
    }

    [Fact]
    public void Elements_stand_depth_first_with_sisters_by_order_then_by_code()
    {
        var small = new Small()
            .Add("elements", ("code", "10"), ("parent", "R"), ("order", "2"), ("kind", "branch"))
            .Add("elements", ("code", "9"), ("parent", "R"), ("order", "3"), ("kind", "branch"))
            .Add("elements", ("code", "20"), ("parent", "R"), ("order", "1"), ("kind", "branch"))
            .Branch("9.10", "9")
            .Branch("9.9", "9");
        Assert.Equal("*total R 20 10 9 9.9 9.10", small.Codes(1, "element"));
    }

    [Fact]
    public void Groups_roll_up_and_the_rest_is_in_no_group()
    {
        var small = Example()
            .Add("groups", ("grouping", "area"), ("group", "G1"), ("parent", ""))
            .Add("groups", ("grouping", "area"), ("group", "G2"), ("parent", "G1"))
            .Add("groups", ("grouping", "system"), ("group", "G1"), ("parent", ""))
            .Add("group_members", ("grouping", "area"), ("package", "A3"), ("group", "G2"))
            .Add("group_members", ("grouping", "area"), ("package", "A4"), ("group", "G1"));
        Assert.Equal(
            "*total G1 G2 *undistributed *no_group *account_charges",
            small.Codes(1, "area")
        );
        Assert.Equal(1200, small.At(1, "G1", "area").Bac);
        Assert.Equal(400, small.At(1, "G2", "area").Bac);
        Assert.Equal(300, small.At(1, "*no_group", "area").Bac);
        Assert.Equal(0, small.At(1, "G1", "system").Bac);
    }

    [Fact]
    public void Cost_elements_in_use_are_rows()
    {
        var small = Example()
            .Budget("A1", "equipment", "1")
            .Cost("A1", 4, "5", costElement: "subcontract");
        Assert.Equal(
            "*total labour equipment subcontract *undistributed",
            small.Codes(1, "cost_element")
        );
        Assert.Equal(1600, small.At(1, "labour", "cost_element").Ac);
    }

    [Fact]
    public void Gap_is_what_is_allotted_less_what_the_children_have()
    {
        var tree = new Small()
            .Add("elements", ("code", "B"), ("parent", "R"), ("kind", "branch"), ("allotted", "10"))
            .Package("B.1", "percent", "4", 1, 28, parent: "B")
            .Add("elements", ("code", "B.2"), ("parent", "B"), ("allotted", "7.50"))
            .Budget("B.2", "labour", "99")
            .Add("elements", ("code", "C"), ("parent", "R"), ("kind", "branch"), ("allotted", "3"))
            .Model()
            .Tree()
            .ToDictionary(row => row.Code, StringComparer.Ordinal);
        Assert.Equal(-150, tree["B"].Gap);
        Assert.Equal(300, tree["C"].Gap);
        Assert.Null(tree["R"].Gap);
        Assert.Null(tree["B.2"].Gap);
        Assert.Equal((10300, 2, 2), ((int)tree["B"].Budget, tree["B"].Packages, tree["B"].Level));
        Assert.Equal(("project", "work_package"), (tree["R"].Kind, tree["B.1"].Kind));
    }
}
