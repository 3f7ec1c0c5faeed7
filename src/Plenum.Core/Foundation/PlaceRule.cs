namespace Plenum.Core.Foundation;

/// <summary>
/// A rule that asks its question at one place after another: at every element, package, account or entry. What it finds
/// at a place depends on that place and on places near it, so that after a change only those need be asked again.
/// </summary>
public abstract class PlaceRule : AuditRule
{
    /// <summary>How many places there are; they are numbered from 0.</summary>
    public abstract int Places { get; }

    /// <summary>What it finds at a place.</summary>
    public abstract IEnumerable<Finding> At(int place);

    public sealed override IEnumerable<Finding> Run()
    {
        for (var place = 0; place < Places; place++)
        {
            foreach (var finding in At(place))
            {
                yield return finding;
            }
        }
    }

    protected static IEnumerable<Finding> Nothing => [];
}
