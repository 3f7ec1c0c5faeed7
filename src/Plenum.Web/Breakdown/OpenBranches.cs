using System.Collections.Immutable;
using Plenum.Core;
using Plenum.Web.Host;

namespace Plenum.Web.Breakdown;

/// <summary>
/// Which branches of the outline are open, for each project that one person looks at. They are kept by the elements'
/// ids, so that they stay open when the project changes, and while another chapter is shown.
/// </summary>
public sealed class OpenBranches
{
    private readonly Dictionary<ShelvedProject, ImmutableHashSet<int>> open = [];

    /// <summary>Ids of the open elements; at first the root.</summary>
    public ImmutableHashSet<int> Of(ShelvedProject shelved, Project project) =>
        open.TryGetValue(shelved, out var ids)
            ? ids
            : open[shelved] = [project.Tree.Elements.Ids[0]];

    /// <summary>Opens a closed branch, closes an open one.</summary>
    public void Turn(ShelvedProject shelved, Project project, int position)
    {
        var ids = Of(shelved, project);
        var id = project.Tree.Elements.Ids[position];
        var closed = ids.Remove(id);
        open[shelved] = ReferenceEquals(closed, ids) ? ids.Add(id) : closed;
    }

    /// <summary>Opens the way to an element, and its own branch.</summary>
    public void OpenTo(ShelvedProject shelved, Project project, int position)
    {
        var ids = Of(shelved, project).ToBuilder();
        for (var row = position; row >= 0; row = project.Tree.Parent[row])
        {
            if (project.Tree.HasChildren(row))
            {
                ids.Add(project.Tree.Elements.Ids[row]);
            }
        }

        open[shelved] =
            ids.Count == Of(shelved, project).Count ? Of(shelved, project) : ids.ToImmutable();
    }

    /// <summary>Opens every branch above a level and closes all others. Cost: one walk over all elements.</summary>
    public void ToLevel(ShelvedProject shelved, Project project, int level)
    {
        var tree = project.Tree;
        var ids = ImmutableHashSet.CreateBuilder<int>();
        for (var row = 0; row < tree.Count; row++)
        {
            if (tree.Level[row] < level && tree.HasChildren(row))
            {
                ids.Add(tree.Elements.Ids[row]);
            }
        }

        open[shelved] = ids.ToImmutable();
    }
}
