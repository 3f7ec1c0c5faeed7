using System.Globalization;
using System.Text;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Bench.Data;

/// <summary>A ledger of actual cost as a CSV file, charges and periods in no order.</summary>
internal static class LedgerFile
{
    public const string Header = "document,line,charge,period,cost_element,amount";

    public static void Write(string path, int rows, PackageProject project, ulong seed)
    {
        var draw = new Draw(seed);
        string[] periods =
        [
            .. Enumerable.Range(0, project.PeriodEnds.Length).Select(PackageProject.PeriodCode),
        ];
        using var file = new StreamWriter(path, append: false, new UTF8Encoding(false), 1 << 16);
        file.Write(Header + "\n");
        for (var row = 0; row < rows; row++)
        {
            var cents = draw.Between(-100_000, 2_000_000);
            file.Write(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"D{row / 4:0000000},{(row % 4) + 1},{PackageProject.CodeOf(draw.Below(project.Packages))},"
                )
            );
            file.Write(periods[draw.Below(periods.Length)]);
            file.Write(',');
            file.Write(CostElements.Words.Format(draw.Below(CostElements.Count)));
            file.Write(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $",{(cents < 0 ? "-" : "")}{Math.Abs(cents) / 100}.{Math.Abs(cents) % 100:00}\n"
                )
            );
        }
    }
}
