using System.Buffers;
using System.Text;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The project document of the map: what the elements of a project value are called, how wide they are and what is
/// missing, as columns in depth-first order. The layout, byte by byte, stands beside the map that reads it
/// (src/Plenum.Web/wwwroot/map/README.md). Time and memory: linear in the elements.
/// </summary>
public static class MapDocument
{
    /// <summary>Greatest number of levels that a map shows.</summary>
    public const int MostLevels = 64;

    internal const int Version = 1;

    private const double HundredthsOfAnHour = 100;

    [Flags]
    private enum Flag
    {
        None = 0,
        Package = 1,
        NotSplit = 2,
        Finding = 4,
        Planning = 8,
    }

    /// <summary>Writes the document.</summary>
    /// <param name="project">The value that is shown; the document carries its revision.</param>
    /// <param name="output">Where the bytes go.</param>
    /// <param name="findings">
    /// The elements that are marked for a finding; null for <see cref="MapFindings.Of(Project)"/>, which runs the audit.
    /// </param>
    /// <exception cref="QuestionException">There is no element, or there are too many levels.</exception>
    public static void Write(
        Project project,
        IBufferWriter<byte> output,
        MapFindings? findings = null
    )
    {
        var tree = project.Tree;
        CheckShown(tree);
        var currency = project.Settings.Currency;
        var accounts = project.Placement.Accounts;
        var writer = new DocumentWriter(output);
        writer.Bytes("PLMP"u8);
        writer.UInt16(Version);
        writer.Byte(tree.Depth);
        writer.Byte(currency.Digits);
        writer.Int64(project.Revision);
        writer.UInt32(tree.Count);
        writer.UInt32(accounts.Count);
        writer.Bytes(Encoding.ASCII.GetBytes(currency.Code));
        writer.Byte(0);
        foreach (var name in LevelNames.Of(project))
        {
            var bytes = Encoding.UTF8.GetBytes(name);
            writer.UInt16(bytes.Length);
            writer.Bytes(bytes);
        }

        writer.Column<double>(Amounts(project.Totals.Budget, 1));
        writer.Column<double>(Amounts(project.HourTotals.Budget, HundredthsOfAnHour));
        writer.Column<double>(Gaps(tree, project.Totals, 1));
        writer.Column<double>(Gaps(tree, project.HourTotals, HundredthsOfAnHour));
        writer.Column<int>(AccountOutlines.Of(tree, project.Placement));
        writer.Column<byte>(Levels(tree));
        writer.Column<byte>(Flags(tree, findings ?? MapFindings.Of(project)));
        writer.Texts(tree.Elements.Codes);
        writer.Texts(tree.Elements.Texts(ElementTable.Name));
        writer.Texts(accounts.Codes);
    }

    /// <summary>Writes the document to a stream, synchronously.</summary>
    /// <inheritdoc cref="Write(Project, IBufferWriter{byte}, MapFindings)"/>
    public static void Write(Project project, Stream stream, MapFindings? findings = null) =>
        StreamOutput.Write(stream, output => Write(project, output, findings));

    /// <exception cref="QuestionException">There is no element, or there are too many levels.</exception>
    internal static void CheckShown(ElementTree tree)
    {
        if (tree.Count == 0)
        {
            throw new QuestionException(
                "The project has no element yet. Import elements, and the map shows them."
            );
        }

        if (tree.Depth > MostLevels)
        {
            throw new QuestionException(
                $"The breakdown has {tree.Depth} levels. The map shows up to {MostLevels}."
            );
        }
    }

    private static double[] Amounts(long[] amounts, double unit) =>
        Array.ConvertAll(amounts, amount => amount / unit);

    /// <summary>
    /// What is missing at each element. Nothing to compare is 0 for an element with children, and an unknown size for
    /// one that should have children and has none.
    /// </summary>
    private static double[] Gaps(ElementTree tree, ElementTotals totals, double unit)
    {
        var gaps = new double[tree.Count];
        for (var row = 0; row < gaps.Length; row++)
        {
            gaps[row] =
                totals.Gap[row] != Cell.NoLong ? totals.Gap[row] / unit
                : IsNotSplit(tree, row) ? double.NaN
                : 0;
        }

        return gaps;
    }

    private static byte[] Levels(ElementTree tree)
    {
        var levels = new byte[tree.Count];
        for (var row = 0; row < levels.Length; row++)
        {
            levels[row] = (byte)tree.Level[row];
        }

        return levels;
    }

    private static byte[] Flags(ElementTree tree, MapFindings findings)
    {
        var flags = new byte[tree.Count];
        for (var row = 0; row < flags.Length; row++)
        {
            var flag =
                tree.PackageOfRow[row] >= 0 ? Flag.Package
                : IsNotSplit(tree, row) ? Flag.NotSplit
                : Flag.None;
            flag |= tree.Kind(row) == ElementTable.PlanningPackage ? Flag.Planning : Flag.None;
            flag |= findings.At(row) ? Flag.Finding : Flag.None;
            flags[row] = (byte)flag;
        }

        return flags;
    }

    /// <summary>True for a leaf that is no package: it should be split and is not.</summary>
    internal static bool IsNotSplit(ElementTree tree, int row) =>
        tree.PackageOfRow[row] < 0 && !tree.HasChildren(row);
}
