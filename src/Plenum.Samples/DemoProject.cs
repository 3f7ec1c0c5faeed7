using Plenum.Samples.Demo;
using Plenum.Samples.Demo.Tables;
using Plenum.Samples.Foundation;

namespace Plenum.Samples;

/// <summary>
/// The demo project: the Kestrel Bay seawater desalination plant, 18 months into its work. Plant, people, suppliers
/// and figures are invented.
/// </summary>
public static partial class DemoProject
{
    public const ulong DefaultSeed = 20270831;

    /// <summary>What the project comes to at its status date, minor units; the generator steers towards it.</summary>
    internal const long PlannedValue = 298_900_000_00;
    internal const long EarnedValue = 283_900_000_00;
    internal const long ActualCost = 296_300_000_00;
    internal const long BudgetAtCompletion = 485_100_000_00;
    internal const long EstimateAtCompletion = 503_700_000_00;
    internal const long Allowances = 250_000_00;
    internal const long Reserve = 14_000_000_00;

    /// <summary>
    /// Writes all tables of the demo project as CSV files into a folder, which is made if it is missing. Files of the
    /// same names are replaced, others left alone. The same seed gives the same bytes on any machine; codes and names
    /// do not depend on the seed, figures do.
    /// </summary>
    /// <exception cref="IOException">The folder or a file in it cannot be written.</exception>
    public static void Write(string folder, ulong seed = DefaultSeed)
    {
        var plan = Make(seed);
        using var tables = new TableFolder(folder);
        DemoTables.Write(plan, tables, seed);
        tables.Complete();
    }

    internal static DemoPlan Make(ulong seed)
    {
        var plan = Structure.Build();
        Schedule.Make(plan, seed);
        Techniques.Choose(plan, seed);
        Budgets.Make(plan, seed);
        Execution.Run(plan, seed);
        Costs.Make(plan, seed);
        Activities.Make(plan);
        return plan;
    }
}
