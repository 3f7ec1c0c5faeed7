using Plenum.Samples.Foundation;
using Plenum.Samples.Synthetic;

namespace Plenum.Samples;

/// <summary>Projects of any size, made up of plain words, valid by every rule, with work and cost two thirds through.</summary>
public static class SyntheticProject
{
    public const ulong DefaultSeed = 1;
    public const int MostPackages = 1_000_000;

    /// <summary>
    /// Writes all tables of a project with so many packages as CSV files into a folder, which is made if it is
    /// missing. Files of the same names are replaced, others left alone. The same number and seed give the same bytes
    /// on any machine. Rows stream to the files: memory does not grow with the number of packages.
    /// </summary>
    /// <param name="folder">Where the files go.</param>
    /// <param name="packages">1 to <see cref="MostPackages"/>.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="progress">Told what is being done and which share of the whole is done, 0 to 1.</param>
    /// <param name="ct">Stops the writing; none of the files gets its name then.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of packages is out of range.</exception>
    /// <exception cref="IOException">The folder or a file in it cannot be written.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static void Write(
        string folder,
        int packages,
        ulong seed,
        Action<string, double>? progress = null,
        CancellationToken ct = default
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(packages, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(packages, MostPackages);
        var tree = new SyntheticTree(packages);
        var account = new SyntheticAccount(tree, seed);
        var budgets = new long[tree.Accounts];
        for (var i = 0; i < tree.Accounts; i++)
        {
            ct.ThrowIfCancellationRequested();
            account.Make(i);
            budgets[i] = account.Budget;
            Tell("Budgets", 0, i);
        }
        using var tables = new TableFolder(folder);
        var people = new SyntheticPeople(tree);
        new SyntheticFrame(tree, people, seed).Write(tables, budgets);
        var breakdown = new SyntheticBreakdown(tree, people, budgets, tables);
        var plan = new SyntheticPlan(tables);
        var execution = new SyntheticExecution(tables);
        for (var i = 0; i < tree.Accounts; i++)
        {
            ct.ThrowIfCancellationRequested();
            account.Make(i);
            var random = new SeededRandom(SeededRandom.Mix(seed) ^ (ulong)i);
            breakdown.Write(i, account.Packages);
            plan.Write(breakdown.PartCodes, account.Packages, random);
            execution.Write(breakdown.PartCodes, account.Packages, random);
            Tell("Packages", 0.25, i);
        }
        tables.Complete();
        progress?.Invoke("Done", 1);

        void Tell(string what, double from, int done)
        {
            const double Budgets = 0.25;
            if (done % 16 == 0)
            {
                var part = from > 0 ? 1 - Budgets : Budgets;
                progress?.Invoke(what, from + (part * done / tree.Accounts));
            }
        }
    }
}
