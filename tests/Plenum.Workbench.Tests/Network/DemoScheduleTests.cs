using Plenum.Core;
using Plenum.Core.Network;
using Plenum.Core.Network.Assessment;
using Plenum.Exchange.Import;
using Plenum.Samples;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Network;

/// <summary>The schedule of the demo plant, which is invented: what drives it, and its assessment metric by metric.</summary>
public class DemoScheduleTests
{
    private static readonly Lazy<Project> Demo = new(Make);

    [Fact]
    public void The_late_floor_drives_the_end_as_it_was_planted()
    {
        var answer = new NetworkQuestion().Ask(Demo.Value);
        Assert.StartsWith("10.1.03", answer.Chain[0].Activity.Code, StringComparison.Ordinal);
        Assert.Equal(Holder.Progress, answer.Chain[0].HeldBy);
        Assert.Equal("09.4.02.5-M", answer.Chain[^1].Activity.Code);
        Assert.Equal(0, answer.CriticalFloat);
    }

    [Fact]
    public void The_chain_to_a_milestone_ends_with_it()
    {
        var chain = new NetworkQuestion("03.1.04.11-M").Ask(Demo.Value).Chain;
        Assert.Equal("03.1.04.11-M", chain[^1].Activity.Code);
        Assert.True(chain.Count > 3);
    }

    [Theory]
    [InlineData(1, 1, 1_839, true)]
    [InlineData(2, 0, 4_092, true)]
    [InlineData(3, 208, 4_092, false)]
    [InlineData(4, 3_829, 4_092, true)]
    [InlineData(5, 0, 1_839, true)]
    [InlineData(6, 1_710, 1_839, false)]
    [InlineData(7, 0, 1_839, true)]
    [InlineData(8, 56, 1_839, true)]
    [InlineData(9, 0, 3_327, true)]
    [InlineData(10, 0, 1_839, true)]
    [InlineData(11, 1_019, 1_563, false)]
    [InlineData(12, 600, 600, true)]
    [InlineData(13, 333, 365, false)]
    [InlineData(14, 1_488, 1_563, true)]
    public void Each_metric_of_the_demo_counts_what_the_files_hold(
        int number,
        int count,
        int of,
        bool pass
    )
    {
        var metric = new AssessQuestion().Ask(Demo.Value).Metrics[number - 1];
        Assert.Equal((number, count, of), (metric.Number, metric.Count, metric.Of));
        Assert.Equal(pass, metric.Pass);
    }

    [Fact]
    public void Early_dates_keep_to_every_link_that_asks_for_something()
    {
        var dates = Demo.Value.Network.Dates;
        for (var link = 0; link < dates.Input.LinkCount; link++)
        {
            if (
                dates.Input.Type[link] == LinkType.FinishToStart
                && !dates.IsStarted(dates.Input.To[link])
                && dates.Input.Lag[link] >= 0
            )
            {
                Assert.True(
                    dates.EarlyStart(dates.Input.To[link])
                        > dates.EarlyFinish(dates.Input.From[link])
                        || dates.IsMilestone(dates.Input.To[link])
                );
            }
        }
    }

    [Fact]
    public void Practices_of_the_demo_are_measured()
    {
        IReadOnlyList<PracticeMeasure> practices = new AssessQuestion().Ask(Demo.Value).Practices;
        Assert.Equal(
            [1, 2, 3, 4, 6, 7, 8, 9, 10],
            practices.Select(one => one.Practice).Distinct()
        );
    }

    private static Project Make()
    {
        using var folder = new TemporaryFolder();
        DemoProject.Write(folder.Path);
        var result = Importer.Run(Project.Empty, [folder.Path], replace: false);
        Assert.False(result.Errors.Any);
        return result.Project;
    }
}
