using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>Writes every table of the demo project.</summary>
internal static class DemoTables
{
    public static void Write(DemoPlan plan, TableFolder tables, ulong seed)
    {
        var ledger = Ledger.Make(plan, seed);
        ProjectTables.Write(tables);
        ScopeTables.Write(tables);
        PeopleTables.Write(plan, tables);
        WorkSetTables.Write(plan, tables);
        ElementTables.Write(plan, tables);
        RegisterTables.Write(tables);
        GroupTables.Write(plan, tables);
        PackageTables.Write(plan, tables);
        EstimateTables.Write(plan, tables, seed);
        NetworkTables.Write(plan, tables);
        StatusTables.Write(plan, tables, seed);
        StatusDetailTables.Write(plan, tables);
        CostTables.Write(plan, ledger, tables, seed);
        ChangeTables.Write(plan, tables);
    }
}
