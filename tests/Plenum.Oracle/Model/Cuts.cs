using System.Numerics;

namespace Plenum.Oracle.Model;

/// <summary>
/// Which pieces belong to which row of a cut: the total, the cut's own rows, then the rows named with an asterisk
/// that hold what none of the own rows holds.
/// </summary>
public sealed class Cuts(Facts facts, IReadOnlyList<Piece> pieces, RowSum rowSum)
{
    public IReadOnlyList<Row> Rows(string by, int? level)
    {
        var rows = new List<Row> { rowSum.Of("*total", "", pieces, facts.Undistributed) };
        switch (by)
        {
            case "account":
                rows.AddRange(
                    facts.Accounts.Select(account =>
                        Own(
                            account.Code,
                            account.Name,
                            piece => piece.Account?.Code == account.Code
                        )
                    )
                );
                AddRest(rows, "*no_account", piece => piece.Account is null);
                AddUndistributed(rows);
                break;
            case "unit":
                rows.AddRange(
                    facts.Units.Select(unit =>
                        Own(
                            unit.Code,
                            unit.Name,
                            piece => Within(facts.Units, piece.Account?.Unit, unit.Code)
                        )
                    )
                );
                AddRest(rows, "*no_account", piece => piece.Account is null);
                AddUndistributed(rows);
                break;
            case "cost_element":
                rows.AddRange(
                    CostElements
                        .All.Select(costElement =>
                            Own(costElement, "", piece => piece.CostElement == costElement)
                        )
                        .Where(row => row.SaysSomething || IsUsed(row.Code))
                );
                AddUndistributed(rows);
                break;
            case "package":
                rows.AddRange(
                    facts.Packages.Select(package =>
                        Own(
                            package.Code,
                            facts.Element(package.Code).Name,
                            piece => !piece.IsAccountCharge && piece.Owner == package.Code
                        )
                    )
                );
                AddUndistributed(rows);
                AddRest(rows, "*account_charges", piece => piece.IsAccountCharge);
                break;
            case "element":
                AddElements(rows, level);
                break;
            default:
                AddGroups(rows, by);
                break;
        }

        return rows;
    }

    private void AddElements(List<Row> rows, int? level)
    {
        var shown = facts.Elements.Where(element => IsShown(element, level)).ToList();
        rows.AddRange(
            shown.Select(element =>
                Own(
                    element.Code,
                    element.Name,
                    piece => facts.LiesWithin(piece.Element, element.Code)
                )
            )
        );
        AddUndistributed(rows);
        AddRest(
            rows,
            "*account_charges",
            piece => !shown.Exists(element => facts.LiesWithin(piece.Element, element.Code))
        );
    }

    /// <summary>Without level every element; with one the elements of that level and the leaves above it.</summary>
    private bool IsShown(Element element, int? level) =>
        level is null
        || element.Level == level
        || (element.Level < level && !facts.Elements.Any(other => other.Parent == element.Code));

    private void AddGroups(List<Row> rows, string grouping)
    {
        var groups = facts.Groupings[grouping];
        string? GroupOf(Piece piece) =>
            piece.IsAccountCharge ? null : facts.GroupOf.GetValueOrDefault((grouping, piece.Owner));
        rows.AddRange(
            groups.Select(group =>
                Own(group.Code, group.Name, piece => Within(groups, GroupOf(piece), group.Code))
            )
        );
        AddUndistributed(rows);
        AddRest(rows, "*no_group", piece => !piece.IsAccountCharge && GroupOf(piece) is null);
        AddRest(rows, "*account_charges", piece => piece.IsAccountCharge);
    }

    private Row Own(string code, string name, Func<Piece, bool> belongs) =>
        rowSum.Of(code, name, [.. pieces.Where(belongs)], BigInteger.Zero);

    private void AddRest(List<Row> rows, string code, Func<Piece, bool> belongs)
    {
        var row = Own(code, "", belongs);
        if (row.SaysSomething)
        {
            rows.Add(row);
        }
    }

    private void AddUndistributed(List<Row> rows)
    {
        var row = rowSum.Of("*undistributed", "", [], facts.Undistributed);
        if (row.SaysSomething)
        {
            rows.Add(row);
        }
    }

    /// <summary>Whether a node of a tree is the given one or lies below it.</summary>
    private static bool Within(IReadOnlyList<Node> tree, string? node, string top)
    {
        for (var next = node ?? ""; next != ""; next = tree.Single(one => one.Code == next).Parent)
        {
            if (next == top)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a cost element has any budget, cost or commitment, at whatever date.</summary>
    private bool IsUsed(string costElement) =>
        facts.Packages.Any(package => !package.Budget[costElement].IsZero)
        || facts.Bookings.Any(booking =>
            booking.CostElement == costElement && !booking.Amount.IsZero
        )
        || facts.Commitments.Any(line => line.CostElement == costElement && !line.Amount.IsZero);
}
