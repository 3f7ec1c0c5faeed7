using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.BadInput;

/// <summary>Input of a size that no memory should be asked to hold.</summary>
public class LargeInputTests
{
    private const long Mebibyte = 1L << 20;
    private const int Rows = 1_000_000;

    /// <summary>
    /// All that is ever allocated bounds what is held at once. The bound is a third of the line's 100 MB; the
    /// longest record that is read is a million characters.
    /// </summary>
    [Fact]
    public void A_line_of_100_megabytes_is_refused_and_never_held()
    {
        using var terminal = PumpHouse.Open();
        using (var file = File.Create(terminal["people.csv"]))
        {
            file.Write("person,name\ndee,"u8);
            var block = new byte[Mebibyte];
            block.AsSpan().Fill((byte)'x');
            for (var i = 0; i < 100; i++)
            {
                file.Write(block);
            }
        }

        terminal.Say("people.csv: a row of 100 MiB without a line end\n");
        terminal.Do("tree", PumpHouse.File);
        var before = GC.GetTotalAllocatedBytes(precise: true);
        terminal.Run("import", PumpHouse.File, "people.csv");
        var allocated = GC.GetTotalAllocatedBytes(precise: true) - before;
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"allocated: {allocated / Mebibyte} MiB")
        );
        Assert.InRange(allocated, 1, 33 * Mebibyte);
        Refusal.OfImport(terminal, ["people.csv"]);
    }

    /// <summary>
    /// Time and memory are bounded loosely, for slow machines. The memory is what stays after a collection of what is
    /// garbage plus what has been allocated since: a bound of the peak.
    /// </summary>
    [Fact]
    public void Of_a_million_errors_a_thousand_are_listed_and_all_are_counted()
    {
        using var terminal = PumpHouse.Open();
        var content = PumpHouse.ContentOf(terminal);
        using (var file = new StreamWriter(terminal["actuals.csv"], false, new UTF8Encoding(false)))
        {
            file.Write("document,line,charge,period,cost_element,amount\n");
            for (var row = 0; row < Rows; row++)
            {
                file.Write(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"N-{row / 10},{row % 10},PH.40,P4,labour,1e3\n"
                    )
                );
            }
        }

        var watch = Stopwatch.StartNew();
        var peak = 0L;
        Reply json;
        using (
            new Timer(
                _ => peak = Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false)),
                null,
                0,
                10
            )
        )
        {
            json = terminal.Run("import", PumpHouse.File, "actuals.csv", "--json");
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{watch.Elapsed.TotalSeconds:F1} s, peak {peak / Mebibyte} MiB"
            )
        );
        Assert.Equal(ExitCode.BadInput, json.Status);
        using var document = JsonDocument.Parse(json.Out);
        Assert.Equal(Rows, document.RootElement.GetProperty("error_count").GetInt64());
        Assert.Equal(1_000, document.RootElement.GetProperty("errors").GetArrayLength());
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromMinutes(2));
        Assert.InRange(peak, 1, 1_024 * Mebibyte);

        var text = terminal.Run("import", PumpHouse.File, "actuals.csv");
        Assert.Equal(ExitCode.BadInput, text.Status);
        var lines = text.Error.TrimEnd('\n').Split('\n');
        Assert.Equal(1_002, lines.Length);
        Approved.Is(
            nameof(Of_a_million_errors_a_thousand_are_listed_and_all_are_counted),
            string.Join('\n', [lines[0], lines[999], .. lines[1_000..]])
        );
        Assert.Equal(content, PumpHouse.ContentOf(terminal));
    }
}
