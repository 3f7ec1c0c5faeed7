using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Web.Standards;

/// <summary>A part of a standard breakdown that a person decides on.</summary>
/// <param name="Row">Its position in the standard breakdown.</param>
/// <param name="Parent">Place of its parent among the parts; −1 for those on the second level.</param>
/// <param name="Level">Its level; the root has level 1.</param>
/// <param name="Packages">How many packages it holds.</param>
public sealed record StandardPart(
    int Row,
    int Parent,
    int Level,
    string Code,
    string Name,
    string? Output,
    int Packages
);

/// <summary>Which parts of a standard breakdown are taken, and why others are not.</summary>
public sealed class StandardChoices
{
    private readonly List<StandardPart> parts = [];
    private readonly Dictionary<int, string> reasons = [];
    private readonly Project standard;

    public StandardChoices(Project standard)
    {
        this.standard = standard;
        var tree = standard.Tree;
        Dictionary<int, int> placeOf = [];
        for (var row = 1; row < tree.Count; row++)
        {
            // the packages of a part come with it
            if (tree.HasChildren(row) || tree.Elements.Texts(ElementTable.Activity)[row] is null)
            {
                placeOf[row] = Parts.Count;
                parts.Add(
                    new StandardPart(
                        row,
                        placeOf.GetValueOrDefault(tree.Parent[row], -1),
                        tree.Level[row],
                        tree.Code(row),
                        tree.Name(row),
                        tree.Elements.Texts(ElementTable.Output)[row],
                        PackagesOf(row)
                    )
                );
            }
        }
    }

    public IReadOnlyList<StandardPart> Parts => parts;

    public string Name => standard.Tree.Name(0);

    /// <summary>The reason of a part that was left out itself; null if it was not.</summary>
    public string? ReasonOf(int part) => reasons.GetValueOrDefault(part);

    /// <summary>It, or what it is part of, is left out.</summary>
    public bool IsLeftOut(int part)
    {
        for (var at = part; at >= 0; at = Parts[at].Parent)
        {
            if (reasons.ContainsKey(at))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What it is part of is left out, so that there is nothing to decide.</summary>
    public bool IsWithin(int part) =>
        Parts[part].Parent is >= 0 and var parent && IsLeftOut(parent);

    /// <summary>Leaves a part out or takes it in again; reasons of parts below it are no longer asked for.</summary>
    public void Turn(int part)
    {
        if (reasons.Remove(part))
        {
            return;
        }

        reasons[part] = "";
        foreach (
            var below in reasons.Keys.Where(other => other != part && IsWithin(other)).ToList()
        )
        {
            reasons.Remove(below);
        }
    }

    public void Say(int part, string reason) => reasons[part] = reason;

    /// <summary>The first part that is left out without a reason; null if there is none.</summary>
    public StandardPart? Unexplained =>
        reasons
            .Where(pair => pair.Value.Trim().Length == 0)
            .Select(pair => pair.Key)
            .Order()
            .Select(part => Parts[part])
            .FirstOrDefault();

    public bool IsAnythingLeft => Enumerable.Range(0, Parts.Count).Any(part => !IsLeftOut(part));

    /// <summary>Elements and packages that would come, and parts that are left out.</summary>
    public (int Elements, int Packages, int LeftOut) Counts()
    {
        var tree = standard.Tree;
        var (elements, packages) = (tree.Count - 1, tree.PackageCount);
        foreach (var part in reasons.Keys)
        {
            elements -= tree.SubtreeEnd[Parts[part].Row] - Parts[part].Row;
            packages -= Parts[part].Packages;
        }

        return (elements, packages, reasons.Count);
    }

    public IReadOnlyList<LeaveOut> Leave() =>
        [
            .. reasons
                .OrderBy(pair => pair.Key)
                .Select(pair => new LeaveOut(Parts[pair.Key].Code, pair.Value.Trim())),
        ];

    private int PackagesOf(int row)
    {
        var tree = standard.Tree;
        var packages = 0;
        for (var at = row; at < tree.SubtreeEnd[row]; at++)
        {
            packages += tree.PackageOfRow[at] >= 0 ? 1 : 0;
        }

        return packages;
    }
}
