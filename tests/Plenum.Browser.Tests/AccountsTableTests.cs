using System.Globalization;
using System.Text.Json;
using Plenum.Cli;

namespace Plenum.Browser.Tests;

/// <summary>The accounts table: its figures are those of the command line, and a reader can order and narrow it.</summary>
public sealed class AccountsTableTests(Site site)
{
    private static readonly (string Head, string Field)[] Columns =
    [
        ("Budget at completion", "bac"),
        ("Planned value", "pv"),
        ("Earned value", "ev"),
        ("Actual cost", "ac"),
        ("Committed", "committed"),
        ("Cost variance", "cv"),
        ("Schedule variance", "sv"),
        ("Percent complete", "percent_complete"),
        ("Percent spent", "percent_spent"),
        ("Estimate to complete", "etc"),
        ("Estimate at completion", "eac"),
        ("Variance at completion", "vac"),
        ("Estimate at completion, rest as budgeted", "eac_plan"),
        ("Estimate at completion by CPI", "eac_cpi"),
        ("Estimate at completion by CPI × SPI", "eac_cpi_spi"),
        ("Estimate at completion by the last three periods", "eac_cpi3"),
        ("Earned schedule", "es"),
        ("Periods passed", "at_periods"),
        ("Forecast finish", "forecast_finish"),
        ("Lost in cost", "cv_unfavourable"),
        ("Gained in cost", "cv_favourable"),
        ("Masking", "cv_masking"),
    ];

    private static readonly (string Head, string Field)[] Indices =
    [
        ("Cost performance index", "cpi"),
        ("Schedule performance index", "spi"),
        ("To-complete index, to the budget", "tcpi_bac"),
        ("To-complete index, to the estimate", "tcpi_eac"),
        ("Schedule performance index, time", "spi_t"),
    ];

    [Theory]
    [InlineData("account", null)]
    [InlineData("unit", null)]
    [InlineData("cost_element", null)]
    [InlineData("element", "3")]
    [InlineData("construction area", null)]
    [InlineData("package", null)]
    public async Task Every_figure_of_the_table_is_that_of_the_command_line_to_the_cent(
        string by,
        string? level
    )
    {
        await using var reader = await Reader.At(
            site,
            $"/p/plant/accounts?by={Uri.EscapeDataString(by)}&columns={AllColumns}"
                + (level is null ? "" : $"&level={level}")
        );
        var shown = await CopiedTable(reader);
        var told = await CommandLine(by, level);

        Assert.Equal(told.Count, shown.Count);
        foreach (var (code, fields) in told)
        {
            var row = shown[code];
            foreach (var (head, field) in Columns)
            {
                AssertSame(fields.GetProperty(field), row[head], $"{code} {field}");
            }

            // before 2 % is earned the screen shows a dash instead of an index
            var complete = fields.GetProperty("percent_complete");
            var isMeasurable =
                complete.ValueKind == JsonValueKind.Number && complete.GetDecimal() >= 0.02m;
            foreach (var (head, field) in Indices)
            {
                if (isMeasurable)
                {
                    AssertSame(fields.GetProperty(field), row[head], $"{code} {field}");
                }
                else
                {
                    Assert.Equal("", row[head]);
                }
            }
        }
    }

    [Fact]
    public async Task What_is_written_in_a_cell_is_the_rounded_figure_and_its_title_the_exact_one()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts?find=03.2-MEC");
        var told = (await CommandLine("account", null))["03.2-MEC"];
        var cell = reader.By("#accounts tbody [data-figure=ac]").First;

        var exact = (await cell.GetAttributeAsync("title"))!;
        Assert.Equal(
            told.GetProperty("ac").GetDecimal(),
            decimal.Parse(
                exact
                    .Replace("EUR", "", StringComparison.Ordinal)
                    .Replace("\u202F", "", StringComparison.Ordinal),
                CultureInfo.InvariantCulture
            )
        );
        Assert.Equal(
            Math.Round(
                    told.GetProperty("ac").GetDecimal() / 1_000_000,
                    1,
                    MidpointRounding.AwayFromZero
                )
                .ToString("0.0", CultureInfo.InvariantCulture),
            await cell.InnerTextAsync()
        );
    }

    [Fact]
    public async Task A_heading_sorts_turns_round_and_gives_the_usual_order_back_and_the_order_is_said()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        var heading = reader.By("#accounts thead button", "Cost");
        Assert.Contains(
            "movement in cost",
            await reader.Text("#accounts-order"),
            StringComparison.Ordinal
        );

        await heading.FocusAsync();
        await reader.Press("Enter");
        await reader.By("#accounts thead th[aria-sort=descending]").WaitForAsync();
        Assert.Contains(
            "cost variance, largest first",
            await reader.Text("#accounts-order"),
            StringComparison.Ordinal
        );
        var largest = await FirstVariances(reader);
        Assert.Equal(largest.OrderDescending(), largest);

        await reader.Press("Enter");
        await reader.By("#accounts thead th[aria-sort=ascending]").WaitForAsync();
        var smallest = await FirstVariances(reader);
        Assert.Equal(smallest.Order(), smallest);

        await reader.Press("Enter");
        await reader.By("#accounts-order", "movement").WaitForAsync();
    }

    [Fact]
    public async Task Finding_narrows_the_rows_and_sums_what_is_left_while_the_whole_stays()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        var whole = await reader.Text("#accounts tfoot tr.total");

        await reader.Press("f");
        await reader.Type("pumping");
        await reader.By("#accounts tfoot tr.shown").WaitForAsync();

        var told = await CommandLine("account", null);
        var expected = told.Where(row =>
                row.Value.GetProperty("name")
                    .GetString()!
                    .Contains("pumping", StringComparison.OrdinalIgnoreCase)
            )
            .Select(row => row.Value.GetProperty("bac").GetDecimal())
            .ToList();
        Assert.NotEmpty(expected);
        await reader.By("#accounts-order", $"{expected.Count} of 97").WaitForAsync();
        var sum = (
            await reader.By("#accounts tfoot tr.shown [data-figure=bac]").GetAttributeAsync("title")
        )!;
        Assert.Equal(expected.Sum(), Exact(sum));
        Assert.Equal(whole, await reader.Text("#accounts tfoot tr.total"));
    }

    [Fact]
    public async Task Only_the_rows_that_hide_offsets_can_be_shown()
    {
        await using var reader = await Reader.At(site, "/p/plant/accounts");
        await reader.By("a", "Show only these").ClickAsync();
        await reader.By("#accounts-order", "7 of 97").WaitForAsync();
        Assert.Equal(7, await reader.By("#accounts tbody tr[data-row]").CountAsync());
    }

    private static string AllColumns =>
        string.Join(',', Web.Accounts.MeasureColumns.All.Select(column => column.Id));

    private static decimal Exact(string title) =>
        decimal.Parse(
            title
                .Split(';')[0]
                .Replace("EUR", "", StringComparison.Ordinal)
                .Replace("\u202F", "", StringComparison.Ordinal)
                .Replace('\u2212', '-'),
            CultureInfo.InvariantCulture
        );

    private static async Task<List<decimal>> FirstVariances(Reader reader)
    {
        List<decimal> values = [];
        foreach (
            var cell in await reader.By("#accounts tbody tr:not(.rest) [data-figure=cv]").AllAsync()
        )
        {
            values.Add(Exact((await cell.GetAttributeAsync("title"))!));
        }

        return values;
    }

    /// <summary>The table as the page gives it to a spreadsheet: the exact figure of every row and column.</summary>
    private static async Task<Dictionary<string, Dictionary<string, string>>> CopiedTable(
        Reader reader
    )
    {
        await reader.By("#copy-table").ClickAsync();
        await reader.By(".said", "rows copied").WaitForAsync();
        var text = await reader.Page.EvaluateAsync<string>("() => navigator.clipboard.readText()");
        var lines = text.TrimEnd('\n').Split('\n').Select(line => line.Split('\t')).ToList();
        return lines
            .Skip(1)
            .ToDictionary(
                cells => cells[0],
                cells => lines[0].Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second),
                StringComparer.Ordinal
            );
    }

    private async Task<Dictionary<string, JsonElement>> CommandLine(string by, string? level)
    {
        await using var output = new StringWriter();
        string[] args =
        [
            "accounts",
            site.Plant,
            "--json",
            "--by",
            by,
            .. level is null ? (string[])[] : ["--level", level],
        ];
        var copy = Path.Combine(site.Folder, Guid.NewGuid() + ".plenum");
        File.Copy(site.Plant, copy);
        args[1] = copy;
        var status = await Program.RunAsync(
            args,
            new CliContext(output, TextWriter.Null, TimeProvider.System),
            TestContext.Current.CancellationToken
        );
        Assert.Equal(0, status);
        return JsonDocument
            .Parse(output.ToString())
            .RootElement.GetProperty("rows")
            .EnumerateArray()
            .ToDictionary(row => row.GetProperty("code").GetString()!, StringComparer.Ordinal);
    }

    private static void AssertSame(JsonElement told, string shown, string what)
    {
        switch (told.ValueKind)
        {
            case JsonValueKind.Null:
                Assert.True(shown.Length == 0, $"{what}: nothing told, {shown} shown");
                break;
            case JsonValueKind.String:
                Assert.Equal(told.GetString(), shown);
                break;
            default:
                var exact = decimal.Parse(shown, CultureInfo.InvariantCulture);
                // the command line gives ratios to six significant digits
                var isRatio = exact != told.GetDecimal();
                Assert.True(
                    !isRatio || Math.Abs(exact - told.GetDecimal()) <= Math.Abs(exact) * 0.000_006m,
                    $"{what}: {told} told, {shown} shown"
                );
                break;
        }
    }
}
