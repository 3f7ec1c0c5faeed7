namespace Plenum.Workbench.Questions;

/// <summary>The answer to a <see cref="PeopleQuestion"/>. Money in major units, exact.</summary>
/// <param name="At">The period end at which packages are open or not; null before the first.</param>
/// <param name="Columns">The units that have accounts, or packages that wait for one; all that could have some, if asked for.</param>
/// <param name="Rows">Elements that carry accounts, or could, each group before its elements; every account stands on one row, once.</param>
/// <param name="People">Everybody, by name.</param>
/// <param name="Budget">Of all accounts.</param>
/// <param name="PackagesWithoutAccount">Packages in no control account.</param>
/// <param name="BudgetWithoutAccount">Their budget.</param>
/// <param name="Undistributed">Undistributed budget and allowances.</param>
public sealed record PeopleAnswer(
    DateOnly? At,
    IReadOnlyList<UnitColumn> Columns,
    IReadOnlyList<MatrixRow> Rows,
    IReadOnlyList<PersonLoad> People,
    decimal Budget,
    int PackagesWithoutAccount,
    decimal BudgetWithoutAccount,
    decimal Undistributed
)
{
    /// <summary>Number of organisation units, those without accounts too.</summary>
    public int Units { get; init; }

    /// <summary>How many open packages a manager should have at most; null where no limit is agreed.</summary>
    public int? Limit { get; init; }

    /// <summary>Budget of the largest account.</summary>
    public decimal LargestAccount { get; init; }

    /// <summary>Accounts that lie below another account, or meet it on the same element and unit.</summary>
    public int Overlaps { get; init; }

    /// <summary>Packages whose unit is not that of their account.</summary>
    public int PackagesOfAnotherUnit { get; init; }

    /// <summary>Number of control accounts.</summary>
    public int Accounts => Columns.Sum(column => column.Accounts);

    /// <summary>Accounts that nobody manages.</summary>
    public int WithoutManager =>
        Rows.Sum(row => row.Crossings.Count(crossing => crossing.Manager is null));

    /// <summary>What the whole project has: accounts, packages without account, and what is not yet distributed.</summary>
    public decimal Whole => Budget + BudgetWithoutAccount + Undistributed;

    public PersonLoad? Person(string? code) =>
        code is null ? null : People.FirstOrDefault(person => person.Code == code);

    /// <summary>Those who manage accounts, the most open packages first; all, or those of one unit.</summary>
    public IEnumerable<PersonLoad> Managers(string? unit = null) =>
        People
            .Where(person => person.Accounts.Count > 0 && (unit is null || person.Unit == unit))
            .OrderByDescending(person => person.Open)
            .ThenByDescending(person => person.Packages)
            .ThenBy(person => person.Name, StringComparer.Ordinal);
}

/// <param name="Code">Code of the unit.</param>
/// <param name="Name">Name.</param>
/// <param name="Group">Name of the unit that it belongs to; empty for none.</param>
/// <param name="Accounts">Number of its accounts.</param>
/// <param name="Budget">Their budget.</param>
public sealed record UnitColumn(
    string Code,
    string Name,
    string Group,
    int Accounts,
    decimal Budget
)
{
    /// <summary>Id of the unit.</summary>
    public int Id { get; init; }
}

/// <param name="Position">Position of the element.</param>
/// <param name="Code">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="IsGroup">It stands only for what follows under it: the sums, and no crossing.</param>
/// <param name="Accounts">Number of accounts.</param>
/// <param name="Budget">Their budget.</param>
/// <param name="Crossings">The accounts that stand on it, by unit.</param>
public sealed record MatrixRow(
    int Position,
    string Code,
    string Name,
    bool IsGroup,
    int Accounts,
    decimal Budget,
    IReadOnlyList<Crossing> Crossings
)
{
    /// <summary>Id of the element.</summary>
    public int Id { get; init; }

    /// <summary>Crossings without account at which packages wait for one, by unit.</summary>
    public IReadOnlyList<WaitingCrossing> Waiting { get; init; } = [];

    /// <summary>The accounts at a crossing; more than one is a breach.</summary>
    public IEnumerable<Crossing> At(int column) =>
        Crossings.Where(crossing => crossing.Column == column);

    /// <summary>The packages that wait at a crossing; null if none do.</summary>
    public WaitingCrossing? WaitingAt(int column) =>
        Waiting.FirstOrDefault(waiting => waiting.Column == column);
}

/// <summary>Packages of a unit that are in no account, where an account for them would stand.</summary>
/// <param name="Column">Number of the unit's column.</param>
/// <param name="Packages">How many.</param>
/// <param name="Budget">Their budget.</param>
/// <param name="Start">The first baseline start among them; null if none is given.</param>
public sealed record WaitingCrossing(int Column, int Packages, decimal Budget, DateOnly? Start);

/// <summary>A control account where its element meets its unit.</summary>
/// <param name="Column">Number of the unit's column.</param>
/// <param name="Account">Code.</param>
/// <param name="Name">Name.</param>
/// <param name="Manager">Code of its manager; null for none.</param>
/// <param name="ManagerName">Name of its manager.</param>
/// <param name="Budget">Its budget.</param>
/// <param name="Packages">Its packages.</param>
/// <param name="Open">Those that are open.</param>
public sealed record Crossing(
    int Column,
    string Account,
    string Name,
    string? Manager,
    string? ManagerName,
    decimal Budget,
    int Packages,
    int Open
)
{
    /// <summary>Id of the account.</summary>
    public int Id { get; init; }

    /// <summary>Id of its manager; 0 for none.</summary>
    public int ManagerId { get; init; }
}

/// <summary>What a person answers for.</summary>
/// <param name="Code">Code.</param>
/// <param name="Name">Name.</param>
/// <param name="Unit">Code of the unit; null for none.</param>
/// <param name="UnitName">Its name.</param>
/// <param name="Accounts">The accounts that the person manages, the largest first.</param>
/// <param name="Packages">Packages in these.</param>
/// <param name="Open">Those that are open.</param>
/// <param name="Budget">Budget of the accounts.</param>
/// <param name="InCharge">Packages for which the person is in charge.</param>
/// <param name="OpenInCharge">Those that are open.</param>
public sealed record PersonLoad(
    string Code,
    string Name,
    string? Unit,
    string? UnitName,
    IReadOnlyList<ManagedAccount> Accounts,
    int Packages,
    int Open,
    decimal Budget,
    int InCharge,
    int OpenInCharge
)
{
    /// <summary>Id of the person.</summary>
    public int Id { get; init; }

    /// <summary>Open packages beyond the limit that was agreed; 0 without a limit.</summary>
    public int Beyond { get; init; }
}

/// <param name="Account">Code.</param>
/// <param name="Name">Name.</param>
/// <param name="Element">Code of the element on which it stands.</param>
/// <param name="Budget">Its budget.</param>
/// <param name="Packages">Its packages.</param>
/// <param name="Open">Those that are open.</param>
public sealed record ManagedAccount(
    string Account,
    string Name,
    string Element,
    decimal Budget,
    int Packages,
    int Open
);
