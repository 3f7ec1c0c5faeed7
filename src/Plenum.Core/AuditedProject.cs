using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core;

/// <summary>
/// A value of a project with everything that the audit finds in it, kept by rule and place, so that after a change only
/// what can have changed is asked again. The answer is always that of the full audit.
/// </summary>
public sealed class AuditedProject
{
    /// <summary>Beyond one element in so many, asking all again is no dearer.</summary>
    private const int MostChangedElements = 8;

    private readonly AuditData? data;

    private AuditedProject(Project project, AuditData? data, IReadOnlyList<RuleFindings> rules)
    {
        Project = project;
        this.data = data;
        Rules = rules;
    }

    public Project Project { get; }

    /// <summary>What each rule finds, in the order of the job; none for a project without elements.</summary>
    public IReadOnlyList<RuleFindings> Rules { get; }

    /// <summary>How many rules were asked as a whole for this value.</summary>
    public int RulesAsked { get; private init; }

    /// <summary>At how many places others were asked.</summary>
    public int PlacesAsked { get; private init; }

    /// <summary>All findings, those that somebody has accepted with the reason.</summary>
    public IEnumerable<Finding> Findings =>
        AcceptedFindingTable.Mark(
            Rules.SelectMany(rule => rule.Findings),
            Project[AcceptedFindingTable.Definition]
        );

    /// <summary>Asks every rule.</summary>
    public static AuditedProject Of(Project project)
    {
        if (project.Tree.Count == 0)
        {
            return new AuditedProject(project, null, []);
        }

        var made = new AuditData(project);
        return new AuditedProject(
            project,
            made,
            [.. ProjectAudit.Entries.Select(entry => Whole(entry, made))]
        )
        {
            RulesAsked = ProjectAudit.Entries.Count,
        };
    }

    /// <summary>The audit of a later value, from this one.</summary>
    /// <param name="next">The later value.</param>
    /// <param name="changes">
    /// What a command says that it has changed, all of it; null if it is not known, and all tables that are not the same
    /// object are compared.
    /// </param>
    public AuditedProject After(Project next, IEnumerable<TableChange>? changes = null)
    {
        if (data is null || next.Tree.Count == 0)
        {
            return Of(next);
        }

        var change = ProjectChange.Of(Project, next, changes);
        if (
            change.Elements.Count > MostChangedElements
            && change.Elements.Count > next.Tree.Count / MostChangedElements
        )
        {
            return Of(next);
        }

        var now = new AuditData(next);
        var places = new AuditPlaces(change, Project, now);
        var period =
            now.Period != data.Period || change.Settings.Overlaps(["start", "status_date"]);
        var (asked, askedPlaces) = (0, 0);
        var rules = new RuleFindings[Rules.Count];
        for (var rule = 0; rule < rules.Length; rule++)
        {
            var entry = ProjectAudit.Entries[rule];
            if (IsWhole(entry.Ground) || Mentions(entry.Ground, Rules[rule], change, next))
            {
                rules[rule] = Whole(entry, now);
                asked++;
                continue;
            }

            var again = places.Of(entry.Ground);
            askedPlaces += again.Count;
            rules[rule] =
                again.Count > 0 || HasGone(entry.Ground)
                    ? Partly(entry, Rules[rule], now, again, change)
                    : Rules[rule].Over(next.Tree);
        }

        return new AuditedProject(next, now, rules)
        {
            RulesAsked = asked,
            PlacesAsked = askedPlaces,
        };

        bool IsWhole(AuditGround ground) =>
            change.Columns.Overlaps(ground.Columns)
            || change.Settings.Overlaps(ground.Keys)
            || (ground.ReadsPeriod && period)
            || (ground.ReadsPlacement && places.PlacementChanged);

        bool HasGone(AuditGround ground) =>
            ground.Place is AuditPlace.Element or AuditPlace.Package
            && change.Elements.Values.Any(element => element.After < 0);
    }

    private static RuleFindings Whole(GroundedRule entry, AuditData data)
    {
        var rule = entry.Make(data);
        if (entry.Ground.Place == AuditPlace.Whole)
        {
            return new RuleFindings(rule, data.Tree, [.. rule.Run()]);
        }

        var asked = (PlaceRule)rule;
        Dictionary<int, Finding[]> byPlace = [];
        for (var place = 0; place < asked.Places; place++)
        {
            Finding[] found = [.. asked.At(place)];
            if (found.Length > 0)
            {
                byPlace[KeyOf(entry.Ground, data, place)] = found;
            }
        }

        return new RuleFindings(RuleText.Of(rule), data.Tree, byPlace)
        {
            AtElements = entry.Ground.Place != AuditPlace.Account,
        };
    }

    private static RuleFindings Partly(
        GroundedRule entry,
        RuleFindings before,
        AuditData data,
        HashSet<int> places,
        ProjectChange change
    )
    {
        Dictionary<int, Finding[]> byPlace = new(before.ByPlace);
        if (entry.Ground.Place != AuditPlace.Account)
        {
            foreach (var (id, element) in change.Elements)
            {
                if (element.After < 0)
                {
                    byPlace.Remove(id);
                }
            }
        }

        PlaceRule? rule = null;
        foreach (var place in places)
        {
            var isPackage = entry.Ground.Place == AuditPlace.Package;
            var at = isPackage ? data.Tree.PackageOfRow[place] : place;
            var key = isPackage ? data.Tree.Elements.Ids[place] : KeyOf(entry.Ground, data, place);
            byPlace.Remove(key);
            if (at >= 0)
            {
                rule ??= (PlaceRule)entry.Make(data);
                Finding[] found = [.. rule.At(at)];
                if (found.Length > 0)
                {
                    byPlace[key] = found;
                }
            }
        }

        return new RuleFindings(before.Rule, data.Tree, byPlace) { AtElements = before.AtElements };
    }

    private static int KeyOf(AuditGround ground, AuditData data, int place) =>
        ground.Place switch
        {
            AuditPlace.Element => data.Tree.Elements.Ids[place],
            AuditPlace.Package => data.Tree.Elements.Ids[data.Tree.PackageRows[place]],
            _ => place,
        };

    /// <summary>
    /// A whole rule has a finding that says a name which has changed: one on the package itself, or on what is linked
    /// behind it; or the new name is blank, which is what it may be looking for.
    /// </summary>
    private static bool Mentions(
        AuditGround ground,
        RuleFindings before,
        ProjectChange change,
        Project next
    )
    {
        if (!change.Columns.Overlaps(ground.Mentioned))
        {
            return false;
        }

        HashSet<string> codes = new(StringComparer.Ordinal);
        foreach (var element in change.Elements.Values)
        {
            if (element.After < 0 || !element.Columns.Overlaps(ground.Mentioned))
            {
                continue;
            }

            if (string.IsNullOrWhiteSpace(next.Tree.Name(element.After)))
            {
                return true;
            }

            codes.UnionWith(LinkedNames.Of(next, element.After));
        }

        return codes.Count > 0 && before.Findings.Any(finding => codes.Contains(finding.Code));
    }
}
