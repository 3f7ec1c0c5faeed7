using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Columns;

/// <summary>
/// The layout of a column cache: the columns of one project value as they lie in memory, so that opening a project
/// takes a copy of what is used and not a conversion of everything. It is an aid and never the truth: it counts only
/// for exactly the state of the database that it names, and anything that does not fit means that it is not there.
/// <code>
/// magic (8 bytes)
/// blocks, one for the ids, each column and each own field of each table
/// directory: format, fingerprint of the layout, stamp of the database, place and hash of every block
/// length of the directory (8), hash of the directory (8), magic (8)
/// </code>
/// All numbers have their low byte first. Hashes are XxHash3 of 64 bits.
/// </summary>
internal static class ColumnFile
{
    public const int Format = 1;

    /// <summary>Length of the directory, its hash, and the magic, at the end of the file.</summary>
    public const int TailLength = 24;

    public static ReadOnlySpan<byte> Magic => "PLNMCOLS"u8;

    /// <summary>The cache that belongs to a project file.</summary>
    public static string PathOf(string project) =>
        project.EndsWith(FormatFacts.Extension, StringComparison.OrdinalIgnoreCase)
            ? project + "-columns"
            : project + FormatFacts.Extension + "-columns";
}

/// <summary>Where a block stands in the file, and the hash of its bytes.</summary>
internal readonly record struct Block(long Offset, long Length, ulong Hash);

/// <summary>How a block holds its cells; the first four bytes of it, then four that are zero.</summary>
internal enum BlockKind
{
    /// <summary>Numbers, one after the other.</summary>
    Numbers = 1,

    /// <summary>One number that all rows have.</summary>
    SameNumber = 2,

    /// <summary>Length of each text in bytes, −1 for none; then all texts as UTF-8.</summary>
    Texts = 3,

    /// <summary>How many different texts; their lengths; all of them as UTF-8; for each row its text, −1 for none.</summary>
    RepeatedTexts = 4,

    /// <summary>No row has a text.</summary>
    NoTexts = 5,
}

/// <summary>The directory's part for one table.</summary>
internal sealed record TableBlocks(
    TableDefinition Definition,
    int Rows,
    Block Ids,
    Block[] Columns,
    IReadOnlyList<KeyValuePair<string, Block>> OwnFields
);
