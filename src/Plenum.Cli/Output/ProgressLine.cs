using System.Globalization;

namespace Plenum.Cli.Output;

/// <summary>
/// One line on the terminal that tells how far long work is. Silent for the first half second, and where messages do
/// not go to a terminal.
/// </summary>
internal sealed class ProgressLine : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan Pace = TimeSpan.FromMilliseconds(100);

    private readonly TextWriter error;
    private readonly TimeProvider clock;
    private readonly bool visible;
    private readonly long start;
    private long shown;
    private int width;

    public ProgressLine(CliContext context)
    {
        error = context.Error;
        clock = context.Clock;
        visible = ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected;
        start = clock.GetTimestamp();
        shown = start;
    }

    public void Show(double part, string what)
    {
        if (
            !visible
            || clock.GetElapsedTime(start) < Patience
            || clock.GetElapsedTime(shown) < Pace
        )
        {
            return;
        }

        shown = clock.GetTimestamp();
        var line = string.Create(
            CultureInfo.InvariantCulture,
            $"{Math.Clamp(part, 0, 1):P0} {what}"
        );
        error.Write("\r" + line.PadRight(width));
        width = line.Length;
    }

    public IProgress<double> As(string what) => new Step(this, what);

    public void Dispose()
    {
        if (width > 0)
        {
            error.Write("\r" + new string(' ', width) + "\r");
        }
    }

    private sealed class Step(ProgressLine line, string what) : IProgress<double>
    {
        public void Report(double value) => line.Show(value, what);
    }
}
