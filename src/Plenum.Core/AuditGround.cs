using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core;

/// <summary>At what a rule asks its question.</summary>
internal enum AuditPlace
{
    /// <summary>At no place of its own: it is asked as a whole.</summary>
    Whole,

    Element,
    Package,

    /// <summary>At a row of the cut by control account.</summary>
    Account,
}

/// <summary>Whose cells a rule reads when it is asked at a place.</summary>
internal enum AuditReach
{
    /// <summary>Its own, and those of tables that say something of it.</summary>
    Own,
    Parent,
    Children,

    /// <summary>All children of its parent.</summary>
    Family,

    /// <summary>All elements on the way to the root.</summary>
    Above,

    /// <summary>All elements below it.</summary>
    Below,

    /// <summary>Its sisters with all that is below them.</summary>
    Kin,

    /// <summary>Any element; it speaks at the root alone.</summary>
    All,

    /// <summary>The packages that it waits for by a link.</summary>
    WaitedFor,

    /// <summary>The packages whose progress it follows by apportioned effort, directly or not.</summary>
    Base,

    /// <summary>The packages of an account, and those that they follow.</summary>
    Members,
}

/// <summary>
/// What a rule of the audit reads. A change of anything in <see cref="Columns"/> or <see cref="Keys"/> has the whole
/// rule asked again; a change of what is read near a place has it asked again at the places near to it.
/// </summary>
internal sealed class AuditGround
{
    private readonly HashSet<ColumnDefinition> columns = [];
    private readonly HashSet<string> keys = new(StringComparer.Ordinal);
    private readonly Dictionary<AuditReach, HashSet<ColumnDefinition>> near = [];
    private readonly HashSet<ColumnDefinition> mentioned = [];

    private AuditGround(AuditPlace place) => Place = place;

    /// <summary>A rule without places.</summary>
    public static AuditGround AsWhole => new(AuditPlace.Whole);

    /// <summary>A rule that is asked at every element: it says the element's code and name.</summary>
    public static AuditGround AtElements =>
        new AuditGround(AuditPlace.Element).Near(
            AuditReach.Own,
            ElementTable.Code,
            ElementTable.Name,
            ElementTable.Parent
        );

    /// <summary>A rule that is asked at every package: what a package is follows from its kind and from having children.</summary>
    public static AuditGround AtPackages =>
        new AuditGround(AuditPlace.Package)
            .Near(AuditReach.Own, ElementTable.Code, ElementTable.Name, ElementTable.Kind)
            .Near(AuditReach.Children, ElementTable.Parent);

    /// <summary>A rule that is asked at every control account.</summary>
    public static AuditGround AtAccounts => new(AuditPlace.Account);

    public AuditPlace Place { get; }

    /// <summary>The present period is read: what it is follows from several tables.</summary>
    public bool ReadsPeriod { get; private set; }

    /// <summary>Which account each package is in is read.</summary>
    public bool ReadsPlacement { get; private set; }

    public IReadOnlySet<ColumnDefinition> Columns => columns;

    public IReadOnlySet<string> Keys => keys;

    public IReadOnlyDictionary<AuditReach, HashSet<ColumnDefinition>> NearColumns => near;

    /// <summary>
    /// Names that a finding of a whole rule says of the element or activity that it is about, and of those that are
    /// linked to it; whether it is found does not depend on them.
    /// </summary>
    public IReadOnlySet<ColumnDefinition> Mentioned => mentioned;

    public AuditGround Near(AuditReach reach, params ReadOnlySpan<ColumnDefinition> read)
    {
        if (!near.TryGetValue(reach, out var known))
        {
            near[reach] = known = [];
        }

        foreach (var column in read)
        {
            known.Add(column);
        }

        return this;
    }

    public AuditGround Own(params ReadOnlySpan<ColumnDefinition> read) =>
        Near(AuditReach.Own, read);

    /// <summary>All columns of tables that say something of the element or package.</summary>
    public AuditGround OwnRows(params ReadOnlySpan<TableDefinition> tables)
    {
        foreach (var table in tables)
        {
            Near(AuditReach.Own, [.. table.Columns]);
        }

        return this;
    }

    public AuditGround Whole(params ReadOnlySpan<ColumnDefinition> read)
    {
        foreach (var column in read)
        {
            columns.Add(column);
        }

        return this;
    }

    public AuditGround Whole(params ReadOnlySpan<TableDefinition> tables)
    {
        foreach (var table in tables)
        {
            columns.UnionWith(table.Columns);
        }

        return this;
    }

    public AuditGround Settings(params ReadOnlySpan<string> read)
    {
        foreach (var key in read)
        {
            keys.Add(key);
        }

        return this;
    }

    public AuditGround Period()
    {
        ReadsPeriod = true;
        return this;
    }

    public AuditGround Placement()
    {
        ReadsPlacement = true;
        return this;
    }

    public AuditGround Mentions(params ReadOnlySpan<ColumnDefinition> read)
    {
        foreach (var column in read)
        {
            mentioned.Add(column);
        }

        return this;
    }
}
