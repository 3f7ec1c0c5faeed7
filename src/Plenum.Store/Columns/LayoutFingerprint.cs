using System.IO.Hashing;
using System.Text;
using Plenum.Core;

namespace Plenum.Store.Columns;

/// <summary>
/// Tells apart two versions of Plenum that might understand the same column cache differently: all definitions, and
/// the builds of the two assemblies, since the numbers behind words belong to a build.
/// </summary>
internal static class LayoutFingerprint
{
    public static UInt128 Value { get; } = Compute();

    private static UInt128 Compute()
    {
        var text = new StringBuilder();
        foreach (var module in new[] { typeof(Project).Module, typeof(LayoutFingerprint).Module })
        {
            text.Append(module.ModuleVersionId).Append('\n');
        }

        foreach (var table in ProjectLayout.Tables)
        {
            text.Append(table.Name).Append('\n');
            foreach (var column in table.Columns)
            {
                text.Append(column.Name)
                    .Append(' ')
                    .Append((int)column.Kind)
                    .Append(column.IsKey ? 'k' : '-')
                    .Append(column.IsWithdrawable ? 'w' : '-')
                    .AppendJoin(',', column.Targets)
                    .Append(' ')
                    .Append(column.Codec?.Expected)
                    .Append('\n');
            }
        }

        return XxHash128.HashToUInt128(Encoding.UTF8.GetBytes(text.ToString()));
    }
}
