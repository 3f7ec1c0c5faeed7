using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Core.People;

namespace Plenum.Core.Accounts;

/// <summary>Makes the cuts of a project.</summary>
public sealed class Cuts
{
    private readonly ElementTree tree;
    private readonly AccountPlacement placement;
    private readonly Table units;
    private readonly Table groups;
    private readonly Table members;
    private readonly int first;
    private readonly int end;
    private readonly bool whole;

    /// <param name="tree">The breakdown.</param>
    /// <param name="placement">Which account each package is in.</param>
    /// <param name="units">The organisation.</param>
    /// <param name="groups">The groups.</param>
    /// <param name="members">Which package is in which group.</param>
    /// <param name="under">Position of the element whose subtree is asked for; −1 for the whole project.</param>
    public Cuts(
        ElementTree tree,
        AccountPlacement placement,
        Table units,
        Table groups,
        Table members,
        int under
    )
    {
        this.tree = tree;
        this.placement = placement;
        this.units = units;
        this.groups = groups;
        this.members = members;
        whole = under < 0;
        first = Math.Max(0, under);
        end = whole ? tree.Count : tree.SubtreeEnd[under];
    }

    /// <summary>One row for all of it.</summary>
    public Cut Whole()
    {
        List<CutRow> rows = [new CutRow(tree.Count == 0 ? "" : tree.Code(first), "", 0)];
        return new Cut("whole", rows, PackageRows(_ => 0), ChargeRows(_ => 0))
        {
            RowOfUndistributed = UndistributedRow(rows),
        };
    }

    public Cut ByAccount()
    {
        var accounts = placement.Accounts;
        int[] order =
        [
            .. Enumerable
                .Range(0, accounts.Count)
                .OrderBy(account => accounts.Codes[account], NaturalOrder.Codes),
        ];
        var rowOfAccount = new int[accounts.Count];
        List<CutRow> rows = [];
        foreach (var account in order)
        {
            rowOfAccount[account] = rows.Count;
            rows.Add(
                new CutRow(
                    accounts.Codes[account]!,
                    accounts.Texts(AccountTable.Name)[account] ?? "",
                    0
                )
            );
        }

        var noAccount = AddRest(rows, Cut.NoAccount);
        return new Cut(
            "account",
            rows,
            PackageRows(package =>
                placement.AccountOfPackage[package] is var account and >= 0
                    ? rowOfAccount[account]
                    : noAccount
            ),
            ChargeRows(account => rowOfAccount[account])
        )
        {
            RowOfUndistributed = UndistributedRow(rows),
            IsOfAPart = !whole,
        };
    }

    public Cut ByUnit()
    {
        int[] parent = ParentRows(units, units.Ints(UnitTable.Parent));
        var (rows, rowOfUnit) = Tree(parent, units.Codes, units.Texts(UnitTable.Name));
        var noAccount = AddRest(rows, Cut.NoAccount);
        var unitOfAccount = placement.Accounts.Ints(AccountTable.Unit).ToArray();
        return new Cut(
            "unit",
            rows,
            PackageRows(package =>
                placement.AccountOfPackage[package] is var account and >= 0
                    ? rowOfUnit[units.RowOf(unitOfAccount[account])]
                    : noAccount
            ),
            ChargeRows(account => rowOfUnit[units.RowOf(unitOfAccount[account])])
        )
        {
            RowOfUndistributed = UndistributedRow(rows),
            IsOfAPart = !whole,
        };
    }

    public Cut ByCostElement()
    {
        List<CutRow> rows = [.. CostElements.Words.Words.Select(word => new CutRow(word, "", 0))];
        return new Cut("cost_element", rows, PackageRows(_ => 0), ChargeRows(_ => 0))
        {
            ByCostElement = true,
            RowOfUndistributed = UndistributedRow(rows),
            IsOfAPart = !whole,
        };
    }

    public Cut ByPackage()
    {
        List<CutRow> rows = [];
        var rowOfPackage = PackageRows(package =>
        {
            var row = tree.PackageRows[package];
            rows.Add(new CutRow(tree.Code(row), tree.Name(row), 0));
            return rows.Count - 1;
        });
        var undistributed = UndistributedRow(rows);
        var charges = AddRest(rows, Cut.AccountCharges);
        return new Cut("package", rows, rowOfPackage, ChargeRows(_ => charges))
        {
            RowOfUndistributed = undistributed,
        };
    }

    /// <summary>
    /// The packages that make one row of a cut, and what is charged to control accounts as such there. Of a row by cost
    /// element, every package with that cost element alone.
    /// </summary>
    public Cut ByPackageOf(Cut cut, int row)
    {
        var rowEnd = row + 1;
        while (
            !cut.Rows[row].IsRest
            && rowEnd < cut.Rows.Count
            && cut.Rows[rowEnd].Level > cut.Rows[row].Level
        )
        {
            rowEnd++;
        }

        List<CutRow> rows = [];
        var rowOfPackage = PackageRows(package =>
        {
            if (!IsInside(cut.RowOfPackage[package]))
            {
                return Cut.Outside;
            }

            var element = tree.PackageRows[package];
            rows.Add(new CutRow(tree.Code(element), tree.Name(element), 0));
            return rows.Count - 1;
        });
        var charges = AddRest(rows, Cut.AccountCharges);
        return new Cut(
            "package",
            rows,
            rowOfPackage,
            ChargeRows(account => IsInside(cut.RowOfCharges[account]) ? charges : Cut.Outside)
        )
        {
            OnlyCostElement = cut.ByCostElement ? row : null,
            IsOfAPart = true,
        };

        bool IsInside(int of) =>
            cut.ByCostElement ? of >= 0 && row < CostElements.Count : of >= row && of < rowEnd;
    }

    /// <param name="level">Elements of this level and the leaves above it; null for every element.</param>
    public Cut ByElement(int? level)
    {
        if (level is not null && tree.Count > 0)
        {
            level = Math.Max(level.Value, tree.Level[first]);
        }

        List<CutRow> rows = [];
        var rowOfElement = new int[tree.Count];
        rowOfElement.AsSpan().Fill(Cut.Outside);
        for (var row = first; row < end; row++)
        {
            if (
                level is null
                || tree.Level[row] == level
                || (tree.Level[row] < level && !tree.HasChildren(row))
            )
            {
                rowOfElement[row] = rows.Count;
                rows.Add(
                    new CutRow(
                        tree.Code(row),
                        tree.Name(row),
                        level is null ? tree.Level[row] - tree.Level[first] : 0
                    )
                );
            }
            else if (tree.Level[row] > level && row > first)
            {
                rowOfElement[row] = rowOfElement[tree.Parent[row]];
            }
        }

        var undistributed = UndistributedRow(rows);
        var charges = AddRest(rows, Cut.AccountCharges);
        return new Cut(
            "element",
            rows,
            PackageRows(package => rowOfElement[tree.PackageRows[package]]),
            ChargeRows(account =>
                rowOfElement[placement.ElementRow[account]] is var row and >= 0 ? row : charges
            )
        )
        {
            RowOfUndistributed = undistributed,
        };
    }

    /// <summary>The groups of a grouping as rows; null if there is no such grouping.</summary>
    public Cut? ByGrouping(string grouping)
    {
        var groupings = groups.Texts(GroupTable.Grouping).ToArray();
        int[] own = [.. Enumerable.Range(0, groups.Count).Where(row => groupings[row] == grouping)];
        if (own.Length == 0)
        {
            return null;
        }

        var codes = Array.ConvertAll(own, row => groups.Texts(GroupTable.Group)[row]);
        var place = codes
            .Select((code, at) => (code, at))
            .ToDictionary(pair => pair.code!, pair => pair.at, StringComparer.Ordinal);
        int[] parent =
        [
            .. own.Select(row =>
                groups.Texts(GroupTable.Parent)[row] is { } code
                    ? place.GetValueOrDefault(code, -1)
                    : -1
            ),
        ];
        var (rows, rowOfGroup) = Tree(
            parent,
            codes,
            Array.ConvertAll(own, row => groups.Texts(GroupTable.Name)[row])
        );
        var undistributed = UndistributedRow(rows);
        var noGroup = AddRest(rows, Cut.NoGroup);
        var charges = AddRest(rows, Cut.AccountCharges);
        var groupOfPackage = new int[tree.PackageCount];
        groupOfPackage.AsSpan().Fill(noGroup);
        for (var row = 0; row < members.Count; row++)
        {
            var package = tree.PackageOfId(members.Ints(GroupMemberTable.Package)[row]);
            if (
                package >= 0
                && members.Texts(GroupMemberTable.Grouping)[row] == grouping
                && place.TryGetValue(members.Texts(GroupMemberTable.Group)[row]!, out var group)
            )
            {
                groupOfPackage[package] = rowOfGroup[group];
            }
        }

        return new Cut(
            grouping,
            rows,
            PackageRows(package => groupOfPackage[package]),
            ChargeRows(_ => charges)
        )
        {
            RowOfUndistributed = undistributed,
            IsOfAPart = !whole,
        };
    }

    private static int[] ParentRows(Table table, ReadOnlySpan<int> parentIds)
    {
        var parent = new int[table.Count];
        for (var row = 0; row < parent.Length; row++)
        {
            parent[row] = parentIds[row] == Cell.NoInt ? -1 : table.RowOf(parentIds[row]);
        }

        return parent;
    }

    private static (List<CutRow> Rows, int[] RowOf) Tree(
        int[] parent,
        ReadOnlySpan<string?> codes,
        ReadOnlySpan<string?> names
    )
    {
        var order = DepthFirstOrder.Of(parent, [], codes);
        var rowOf = new int[parent.Length];
        rowOf.AsSpan().Fill(Cut.Outside);
        List<CutRow> rows = [];
        foreach (var at in order)
        {
            rowOf[at] = rows.Count;
            rows.Add(
                new CutRow(
                    codes[at]!,
                    names[at] ?? "",
                    parent[at] < 0 ? 0 : rows[rowOf[parent[at]]].Level + 1
                )
            );
        }

        return (rows, rowOf);
    }

    private static int AddRest(List<CutRow> rows, string code)
    {
        rows.Add(new CutRow(code, RestName(code), 0));
        return rows.Count - 1;
    }

    private static string RestName(string code) =>
        code switch
        {
            Cut.NoAccount => "in no control account",
            Cut.NoGroup => "in no group",
            Cut.AccountCharges => "charged to control accounts as such",
            _ => "undistributed budget and allowances",
        };

    private int UndistributedRow(List<CutRow> rows) =>
        whole ? AddRest(rows, Cut.UndistributedBudget) : Cut.Outside;

    private int[] PackageRows(Func<int, int> rowOf)
    {
        var rows = new int[tree.PackageCount];
        for (var package = 0; package < rows.Length; package++)
        {
            var row = tree.PackageRows[package];
            rows[package] = row >= first && row < end ? rowOf(package) : Cut.Outside;
        }

        return rows;
    }

    private int[] ChargeRows(Func<int, int> rowOf)
    {
        var rows = new int[placement.Accounts.Count];
        for (var account = 0; account < rows.Length; account++)
        {
            var row = placement.ElementRow[account];
            rows[account] = row >= first && row < end ? rowOf(account) : Cut.Outside;
        }

        return rows;
    }
}
