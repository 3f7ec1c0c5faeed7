using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;

namespace Plenum.Core;

/// <summary>At which places a rule must be asked again after a change, by what it reads near them.</summary>
internal sealed class AuditPlaces
{
    private readonly ProjectChange change;
    private readonly Project before;
    private readonly AuditData after;
    private readonly Lazy<HashSet<int>> movedAccounts;
    private readonly Lazy<Dictionary<string, int>> rowOfAccount;

    public AuditPlaces(ProjectChange change, Project before, AuditData after)
    {
        this.change = change;
        this.before = before;
        this.after = after;
        movedAccounts = new(FindMovedAccounts);
        rowOfAccount = new(() =>
            after
                .Accounts.Rows.Select((row, at) => (row.Code, at))
                .ToDictionary(pair => pair.Code, pair => pair.at, StringComparer.Ordinal)
        );
    }

    private ElementTree Tree => after.Tree;

    private ElementTree Was => before.Tree;

    /// <summary>A package has come into an account, or gone from one.</summary>
    public bool PlacementChanged => movedAccounts.Value.Count > 0;

    /// <summary>
    /// Positions of elements, also for a rule that is asked at packages; rows of the cut by account for one that is asked
    /// at accounts.
    /// </summary>
    public HashSet<int> Of(AuditGround ground)
    {
        HashSet<int> places = [];
        foreach (var (reach, columns) in ground.NearColumns)
        {
            if (!change.Columns.Overlaps(columns))
            {
                continue;
            }

            foreach (var element in change.Elements.Values)
            {
                if (element.Columns.Overlaps(columns))
                {
                    Add(places, reach, element);
                }
            }
        }

        if (ground.Place == AuditPlace.Account)
        {
            foreach (var account in movedAccounts.Value)
            {
                AddAccount(places, account);
            }
        }

        return places;
    }

    private void Add(HashSet<int> places, AuditReach reach, ElementChange element)
    {
        switch (reach)
        {
            case AuditReach.Own:
                AddPlace(places, element.After);
                break;
            case AuditReach.Parent:
                AddChildren(places, element.After);
                break;
            case AuditReach.Children:
                AddPlace(places, ParentNow(element));
                AddPlace(places, ParentBefore(element));
                break;
            case AuditReach.Family:
                AddChildren(places, ParentNow(element));
                AddChildren(places, ParentBefore(element));
                break;
            case AuditReach.Above:
                for (
                    var row = element.After;
                    row >= 0 && row < Tree.SubtreeEnd[element.After];
                    row++
                )
                {
                    places.Add(row);
                }

                break;
            case AuditReach.Below:
                foreach (var row in Lines(element))
                {
                    AddPlace(places, row);
                }

                break;
            case AuditReach.Kin:
                foreach (var row in Lines(element))
                {
                    AddChildren(places, row);
                }

                break;
            case AuditReach.All:
                AddPlace(places, 0);
                break;
            case AuditReach.WaitedFor:
                foreach (var follower in FollowersOf(element.After))
                {
                    places.Add(follower);
                }

                break;
            case AuditReach.Base:
                foreach (var row in Apportioned(element))
                {
                    AddPlace(places, row);
                }

                break;
            default:
                AddAccountOf(places, before.Placement, Was, element.Before);
                AddAccountOf(places, after.Project.Placement, Tree, element.After);
                foreach (var row in Apportioned(element))
                {
                    AddAccountOf(places, after.Project.Placement, Tree, row);
                }

                break;
        }
    }

    private static void AddPlace(HashSet<int> places, int row)
    {
        if (row >= 0)
        {
            places.Add(row);
        }
    }

    private void AddChildren(HashSet<int> places, int parent)
    {
        if (parent < 0)
        {
            return;
        }

        for (
            var child = parent + 1;
            child < Tree.SubtreeEnd[parent];
            child = Tree.SubtreeEnd[child]
        )
        {
            places.Add(child);
        }
    }

    private int ParentNow(ElementChange element) =>
        element.After < 0 ? -1 : Tree.Parent[element.After];

    private int ParentBefore(ElementChange element) =>
        element.Before < 0 ? -1 : Now(Was.Parent[element.Before]);

    /// <summary>Where an element of before stands now; −1 if it is gone.</summary>
    private int Now(int rowBefore) =>
        rowBefore < 0 ? -1 : Tree.Elements.RowOf(Was.Elements.Ids[rowBefore]);

    /// <summary>The element and all above it, now and before.</summary>
    private IEnumerable<int> Lines(ElementChange element)
    {
        for (var row = element.After; row >= 0; row = Tree.Parent[row])
        {
            yield return row;
        }

        for (var row = element.Before; row >= 0; row = Was.Parent[row])
        {
            if (Now(row) is var now and >= 0)
            {
                yield return now;
            }
        }
    }

    private IEnumerable<int> FollowersOf(int row)
    {
        var package = row < 0 ? -1 : Tree.PackageOfRow[row];
        return package < 0
            ? []
            : after.Links.DirectFollowers(package).Select(follower => Tree.PackageRows[follower]);
    }

    /// <summary>Packages whose progress follows that of the element's, by apportioned effort, directly or not.</summary>
    private List<int> Apportioned(ElementChange element)
    {
        List<int> found = [];
        var packages = after.Project[Baseline.PackageTable.Definition];
        var bases = packages.Ints(Baseline.PackageTable.Base);
        var id =
            element.After >= 0
                ? Tree.Elements.Ids[element.After]
                : Was.Elements.Ids[element.Before];
        HashSet<int> open = [id];
        for (var grown = true; grown; )
        {
            grown = false;
            for (var row = 0; row < bases.Length; row++)
            {
                if (bases[row] == Cell.NoInt || !open.Contains(bases[row]))
                {
                    continue;
                }

                var own = packages.Ints(Baseline.PackageTable.Package)[row];
                if (open.Add(own))
                {
                    grown = true;
                    found.Add(Tree.Elements.RowOf(own));
                }
            }
        }

        return found;
    }

    private void AddAccountOf(
        HashSet<int> places,
        AccountPlacement placement,
        ElementTree tree,
        int row
    )
    {
        var package = row < 0 ? -1 : tree.PackageOfRow[row];
        if (package >= 0 && placement.AccountOfPackage[package] is var account and >= 0)
        {
            AddAccount(places, placement.Accounts.Ids[account]);
        }
    }

    private void AddAccount(HashSet<int> places, int id)
    {
        var accounts = after.Project.Placement.Accounts;
        if (
            id > 0
            && accounts.RowOf(id) is var account and >= 0
            && rowOfAccount.Value.TryGetValue(accounts.Codes[account]!, out var row)
        )
        {
            places.Add(row);
        }
    }

    /// <summary>Ids of the accounts of which a package has come or gone, and of packages outside all accounts 0.</summary>
    private HashSet<int> FindMovedAccounts()
    {
        HashSet<int> moved = [];
        if (
            !change.Columns.Overlaps([
                ElementTable.Parent,
                ElementTable.Kind,
                ElementTable.Unit,
                Baseline.PackageTable.Account,
                .. AccountTable.Definition.Columns,
            ])
        )
        {
            return moved;
        }

        var (now, was) = (after.Project.Placement, before.Placement);
        for (var package = 0; package < Tree.PackageCount; package++)
        {
            var row = Was.Elements.RowOf(Tree.Elements.Ids[Tree.PackageRows[package]]);
            Compare(AccountOf(now, package), AccountOf(was, row < 0 ? -1 : Was.PackageOfRow[row]));
        }

        for (var package = 0; package < Was.PackageCount; package++)
        {
            if (Now(Was.PackageRows[package]) is var row && (row < 0 || Tree.PackageOfRow[row] < 0))
            {
                Compare(-1, AccountOf(was, package));
            }
        }

        return moved;

        void Compare(int here, int there)
        {
            if (here != there)
            {
                moved.Add(here);
                moved.Add(there);
            }
        }

        // −1 no package, 0 in no account
        static int AccountOf(AccountPlacement placement, int package) =>
            package < 0 ? -1
            : placement.AccountOfPackage[package] is var account and >= 0
                ? placement.Accounts.Ids[account]
            : 0;
    }
}
