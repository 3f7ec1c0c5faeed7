using Plenum.Samples.Foundation;
using Plenum.Samples.Tests.Reading;

namespace Plenum.Samples.Tests;

/// <summary>The checks that the other tests rely on see a fault when there is one.</summary>
public sealed class RuleChecksTests
{
    [Theory]
    [InlineData("status", "percent", "140")]
    [InlineData("status", "started", "2035-01-01")]
    [InlineData("status", "finished", "2001-01-01")]
    [InlineData("status", "period", "P40")]
    [InlineData("activity_status", "started", "2026-01-02")]
    [InlineData("milestones", "weight", "99")]
    [InlineData("milestones", "planned", "2001-01-01")]
    [InlineData("budget", "amount", "1.00")]
    [InlineData("budget", "amount", "1.005")]
    [InlineData("budget_periods", "amount", "1.00")]
    [InlineData("packages", "base", "nowhere")]
    [InlineData("packages", "technique", "30/60")]
    [InlineData("packages", "finish", "2025-01-01")]
    [InlineData("elements", "parent", "nowhere")]
    [InlineData("elements", "kind", "planning")]
    [InlineData("accounts", "manager", "nobody")]
    [InlineData("accounts", "element", "ROOT")]
    [InlineData("actuals", "charge", "nowhere")]
    [InlineData("actuals", "amount", "0.001")]
    [InlineData("links", "from", "nowhere")]
    [InlineData("postings", "amount", "1.00")]
    [InlineData("item_steps", "step", "dreamt")]
    [InlineData("commitments", "date", "2035-01-01")]
    public void One_wrong_cell_is_noticed(string table, string column, string value)
    {
        using var folder = new TemporaryFolder();
        SyntheticProject.Write(folder.Path, 250, 7, ct: TestContext.Current.CancellationToken);
        Assert.Empty(Check.AllRules(new ProjectFiles(folder.Path)));
        Spoil(Path.Combine(folder.Path, table + ".csv"), column, value);
        Assert.NotEmpty(BreachesOf(folder.Path));
    }

    [Fact]
    public void The_seed_is_spread_as_SplitMix64_does() =>
        // Reference output for the seed 1234567, as published with the algorithm's public-domain C code (from memory).
        Assert.Equal(6457827717110365317UL, SeededRandom.Mix(1234567UL + 0x9E3779B97F4A7C15UL));

    [Fact]
    public void Random_numbers_stay_in_their_range_and_reach_both_of_its_ends()
    {
        var random = new SeededRandom(3);
        var seen = Enumerable.Range(0, 2000).Select(_ => random.Between(-2, 4)).ToHashSet();
        Assert.Equal([-2, -1, 0, 1, 2, 3, 4], seen.Order());
        Assert.All(
            Enumerable.Range(0, 2000),
            _ => Assert.InRange(random.Unit(), 0, 0.9999999999999999)
        );
    }

    /// <summary>A project whose references lead nowhere cannot even be read by some of the look-ups.</summary>
    private static List<string> BreachesOf(string folder)
    {
        try
        {
            return Check.AllRules(new ProjectFiles(folder));
        }
        catch (KeyNotFoundException missing)
        {
            return [missing.Message];
        }
    }

    /// <summary>Replaces the first cell of the column that is not empty. In these texts a comma is followed by a space.</summary>
    private static void Spoil(string path, string column, string value)
    {
        const string InText = ", ";
        const string Hidden = "\u0001";
        var lines = File.ReadAllLines(path);
        var at = Array.IndexOf(lines[0].Split(','), column);
        for (var row = 1; row < lines.Length; row++)
        {
            var cells = lines[row].Replace(InText, Hidden, StringComparison.Ordinal).Split(',');
            if (cells[at].Length > 0)
            {
                cells[at] = value;
                lines[row] = string.Join(',', cells)
                    .Replace(Hidden, InText, StringComparison.Ordinal);
                File.WriteAllText(path, string.Join('\n', lines) + '\n');
                return;
            }
        }
        Assert.Fail($"No cell of {column} to spoil");
    }
}
