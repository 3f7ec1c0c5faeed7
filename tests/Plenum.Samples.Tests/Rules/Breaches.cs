namespace Plenum.Samples.Tests.Rules;

/// <summary>Collects what is wrong, each as one sentence.</summary>
internal sealed class Breaches
{
    public List<string> All { get; } = [];

    public void Unless(bool holds, string message)
    {
        if (!holds)
        {
            All.Add(message);
        }
    }
}
