using Plenum.Core.Foundation;

namespace Plenum.Core.Baseline.Audit;

/// <summary>A rule that is asked at every package, by its number.</summary>
public abstract class PackageRule(PackageBaseline baseline) : PlaceRule
{
    public sealed override int Places => baseline.Count;

    protected PackageBaseline Baseline => baseline;

    public sealed override IEnumerable<Finding> At(int place) =>
        Message(place) is { } message ? [Found(baseline.Code(place), message)] : Nothing;

    /// <summary>What is wrong with the package; null if nothing is.</summary>
    protected abstract string? Message(int package);

    protected string NameOf(int package) => baseline.Tree.Name(baseline.Tree.PackageRows[package]);
}
