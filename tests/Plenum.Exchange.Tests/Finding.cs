namespace Plenum.Exchange.Tests;

public sealed class Finding : IDisposable
{
    private readonly Desk desk = new();

    public void Dispose() => desk.Dispose();

    [Fact]
    public void A_folder_gives_its_tables_in_ordinal_order_and_nothing_else()
    {
        foreach (
            var name in (string[])
                ["b.csv", "a.tsv", "C.CSV", "notes.txt", ".hidden.csv", "~$plan.xlsx", "no-ending"]
        )
        {
            desk.Put(name, "x\n");
        }

        Directory.CreateDirectory(desk.PathOf("below.csv"));
        Assert.Equal(
            ["C.CSV", "a.tsv", "b.csv"],
            [.. TableSource.Find([desk.Folder], desk.Errors).Select(source => source.File)]
        );
        Assert.False(desk.Errors.Any);
    }

    [Fact]
    public void Files_come_in_the_order_in_which_they_are_named()
    {
        var (b, a) = (desk.Put("b.csv", "x\n"), desk.Put("a.csv", "x\n"));
        Assert.Equal(
            ["b", "a"],
            [.. TableSource.Find([b, a], desk.Errors).Select(source => source.Table)]
        );
    }

    [Fact]
    public void A_path_that_is_not_there_is_an_error()
    {
        var path = desk.PathOf("missing.csv");
        Assert.Empty(TableSource.Find([path], desk.Errors));
        Assert.Equal(
            $"missing.csv: \"{path}\" is not there: check the name",
            desk.OnlyError.ToString()
        );
    }

    [Theory]
    [InlineData("plan.xls")]
    [InlineData("plan.docx")]
    [InlineData("plan")]
    public void A_named_file_of_another_kind_is_an_error(string name)
    {
        Assert.Empty(TableSource.Find([desk.Put(name, "x\n")], desk.Errors));
        Assert.Contains("save it as CSV UTF-8 or as .xlsx", desk.OnlyError.Message);
    }

    [Fact]
    public void A_folder_without_tables_is_an_error()
    {
        Assert.Empty(TableSource.Find([desk.Folder], desk.Errors));
        Assert.Contains("holds no table", desk.OnlyError.Message);
    }
}
