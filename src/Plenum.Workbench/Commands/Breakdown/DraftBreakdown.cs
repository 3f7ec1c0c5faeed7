using System.Globalization;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Workbench.Commands.Breakdown;

/// <summary>The breakdown while a command works on it: families in order, by ids.</summary>
public sealed class DraftBreakdown
{
    private readonly EditDraft draft;
    private readonly ElementTree tree;
    private readonly Dictionary<int, List<int>> families = [];
    private readonly string mask;

    // elements that had work before: looked for once, since many parts may get their first packages at once
    private HashSet<int>? owners;

    public DraftBreakdown(EditDraft draft)
    {
        this.draft = draft;
        tree = draft.Before.Tree;
        mask = draft.Before.Settings.CodeMask;
    }

    /// <summary>Id of the root; 0 in an empty project.</summary>
    public int Root => tree.Count > 0 ? tree.Elements.Ids[0] : madeRoot;

    private int madeRoot;

    /// <summary>The children of an element, in order.</summary>
    public IReadOnlyList<int> Children(int id) => Family(id);

    /// <summary>The parent's id; 0 for the root.</summary>
    public int Parent(int id) => draft.Reference(ElementTable.Parent, id);

    public int Level(int id)
    {
        var level = 1;
        for (var at = Parent(id); at != 0; at = Parent(at))
        {
            level++;
        }

        return level;
    }

    /// <summary>The element and all below it, in order.</summary>
    public IEnumerable<int> Subtree(int id)
    {
        var waiting = new Stack<int>([id]);
        while (waiting.TryPop(out var next))
        {
            yield return next;
            var family = Family(next);
            for (var child = family.Count - 1; child >= 0; child--)
            {
                waiting.Push(family[child]);
            }
        }
    }

    /// <summary>True if an element is another one or lies below it.</summary>
    public bool IsWithin(int id, int above)
    {
        for (var at = id; at != 0; at = Parent(at))
        {
            if (at == above)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Adds the first element of an empty project.</summary>
    public int AddRoot(string code, string name)
    {
        madeRoot = draft.Add(
            ElementTable.Definition,
            (ElementTable.Code, code),
            (ElementTable.Name, name)
        );
        families[madeRoot] = [];
        return madeRoot;
    }

    /// <summary>Adds a child at a place among its sisters.</summary>
    /// <param name="parent">Id of the parent.</param>
    /// <param name="place">Place from 0; the number of sisters for the last.</param>
    /// <param name="name">Its name.</param>
    /// <param name="code">Its code; null for the next that is free.</param>
    /// <param name="mayHaveWork">The parent is a package whose work is being passed on.</param>
    /// <exception cref="EditException">The parent is a package with work in it, or a cell is not understood.</exception>
    public int Add(
        int parent,
        int place,
        string name,
        string? code = null,
        bool mayHaveWork = false
    )
    {
        if (!mayHaveWork)
        {
            NeedRoom(parent);
        }

        var given = code ?? NextCode(parent);
        var id = draft.Add(ElementTable.Definition);
        draft.Set(ElementTable.Code, id, given);
        draft.Set(ElementTable.Name, id, name.Trim());
        draft.SetReference(ElementTable.Parent, id, parent);
        families[id] = [];
        Place(parent, place, id);
        return id;
    }

    /// <summary>Moves an element with all below it.</summary>
    /// <exception cref="EditException">It would lie below itself, or the new parent is a package with work in it.</exception>
    public void Move(int id, int parent, int place)
    {
        if (IsWithin(parent, id))
        {
            throw new EditException(
                $"{Say(id)} cannot be moved below itself.",
                "a place outside of what is moved"
            );
        }

        var from = Parent(id);
        if (from != parent)
        {
            NeedRoom(parent);
        }

        var old = Family(from);
        var at = old.IndexOf(id);
        old.RemoveAt(at);
        if (from != parent)
        {
            draft.SetReference(ElementTable.Parent, id, parent);
            LeavePart(from);
        }

        Place(parent, from == parent && at < place ? place - 1 : place, id);
    }

    /// <summary>Takes an element out of its family; its row and those below it must be removed too.</summary>
    public void Forget(int id)
    {
        Family(Parent(id)).Remove(id);
        LeavePart(Parent(id));
    }

    /// <summary>The next code that is free below a parent.</summary>
    public string NextCode(int parent)
    {
        var family = Family(parent);
        var sister = family.Count > 0 ? draft.CodeOf(ElementTable.Definition, family[^1]) : null;
        var number = 1;
        foreach (var child in family)
        {
            number = Math.Max(
                number,
                CodeGiver.NumberOf(draft.CodeOf(ElementTable.Definition, child)) + 1
            );
        }

        var level = Level(parent);
        var above = draft.CodeOf(ElementTable.Definition, parent);
        var code = CodeGiver.Child(mask, above, level, sister, number);
        while (draft.IdOf(ElementTable.Definition, code) != 0)
        {
            code = CodeGiver.Child(mask, above, level, sister, ++number);
        }

        return code;
    }

    /// <summary>An element in words: code and name.</summary>
    public string Say(int id) =>
        $"{draft.CodeOf(ElementTable.Definition, id)} {draft.Text(ElementTable.Name, id)}";

    /// <summary>An element with children is no package: one with work in it is divided instead.</summary>
    private void NeedRoom(int parent)
    {
        if (Family(parent).Count > 0)
        {
            return;
        }

        owners ??= PackageWork.OwnersIn(draft.Before);
        if (
            (owners.Contains(parent) || tree.Elements.RowOf(parent) < 0)
            && PackageWork.First(draft, parent) is { } table
        )
        {
            throw new EditException(
                $"{Say(parent)} is a package that has rows in {table}. Divide it, or take them out first.",
                "an element without work of its own"
            );
        }

        draft.Set(ElementTable.Kind, parent, null);
    }

    /// <summary>A part that has lost its last child is still a part that is to be broken down.</summary>
    private void LeavePart(int parent)
    {
        if (Family(parent).Count == 0 && Parent(parent) != 0)
        {
            draft.Set(ElementTable.Kind, parent, "branch");
        }
    }

    private List<int> Family(int parent)
    {
        if (families.TryGetValue(parent, out var family))
        {
            return family;
        }

        family = [];
        var row = tree.Elements.RowOf(parent);
        for (
            var child = row + 1;
            row >= 0 && child < tree.SubtreeEnd[row];
            child = tree.SubtreeEnd[child]
        )
        {
            family.Add(tree.Elements.Ids[child]);
        }

        families[parent] = family;
        return family;
    }

    /// <summary>Puts an element among its sisters and sees that the order says so.</summary>
    private void Place(int parent, int place, int id)
    {
        var family = Family(parent);
        place = Math.Clamp(place, 0, family.Count);
        family.Insert(place, id);
        if (place == family.Count - 1)
        {
            PlaceLast(family, id);
            return;
        }

        // sisters without an order come last, by code: they need one now
        var last = 0;
        for (var at = 0; at < family.Count; at++)
        {
            var own = at == place ? Cell.NoInt : Order(family[at]);
            if (own == Cell.NoInt || own <= last)
            {
                if (at > place && own != Cell.NoInt && own > last)
                {
                    break;
                }

                own = last + 1;
                SetOrder(family[at], own);
            }

            last = own;
        }
    }

    private void PlaceLast(List<int> family, int id)
    {
        var last = family.Count > 1 ? Order(family[^2]) : 0;
        if (last == Cell.NoInt)
        {
            // its code comes last among those without an order, if it is numbered on
            var before = draft.CodeOf(ElementTable.Definition, family[^2]);
            var own = draft.CodeOf(ElementTable.Definition, id);
            if (Core.Foundation.NaturalOrder.Codes.Compare(before, own) < 0)
            {
                draft.Set(ElementTable.Order, id, null);
                return;
            }

            for (var at = 0; at < family.Count; at++)
            {
                SetOrder(family[at], at + 1);
            }

            return;
        }

        SetOrder(id, last + 1);
    }

    private int Order(int id) => draft[ElementTable.Definition].Int(ElementTable.Order, id);

    private void SetOrder(int id, int order)
    {
        if (Order(id) != order)
        {
            draft.Set(ElementTable.Order, id, order.ToString(CultureInfo.InvariantCulture));
        }
    }
}
