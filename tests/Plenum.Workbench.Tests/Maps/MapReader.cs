using System.Buffers.Binary;
using System.Text;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>
/// Reads the documents of the map field by field, by what the map's own page says of them and by nothing else. It
/// stops at the first thing that breaks the contract.
/// </summary>
internal sealed class MapReader
{
    private readonly byte[] bytes;
    private int at;

    private MapReader(byte[] bytes, string magic)
    {
        this.bytes = bytes;
        Assert.Equal(magic, Encoding.ASCII.GetString(Next(4)));
        Assert.Equal(1, UInt16());
    }

    public static ReadMap Map(byte[] bytes)
    {
        var document = new MapReader(bytes, "PLMP");
        var levels = document.Byte();
        var decimals = document.Byte();
        var revision = document.Int64();
        var count = (int)document.UInt32();
        var accounts = (int)document.UInt32();
        var currency = Encoding.ASCII.GetString(document.Next(3));
        Assert.Equal(0, document.Byte());
        var levelNames = new string[levels];
        for (var level = 0; level < levels; level++)
        {
            levelNames[level] = Encoding.UTF8.GetString(document.Next(document.UInt16()));
        }

        var map = new ReadMap(
            revision,
            currency,
            decimals,
            levelNames,
            document.Column(count, document.Double),
            document.Column(count, document.Double),
            document.Column(count, document.Double),
            document.Column(count, document.Double),
            document.Column(count, document.Int32),
            document.Column(count, document.Byte),
            document.Column(count, document.Byte),
            document.Texts(count),
            document.Texts(count),
            document.Texts(accounts)
        );
        document.AssertEnd();
        AssertTree(map);
        return map;
    }

    public static ReadLens Lens(byte[] bytes)
    {
        var document = new MapReader(bytes, "PLLN");
        var classes = document.Byte();
        var bits = document.Byte();
        Assert.InRange(bits, 0, 1);
        var revision = document.Int64();
        var count = (int)document.UInt32();
        var classOf = document.Column(count, document.Byte);
        document.AssertEnd();
        Assert.InRange(classes, 1, 32);
        Assert.All(classOf, one => Assert.InRange(one, 0, classes - 1));
        return new ReadLens(revision, classes, bits == 1, classOf);
    }

    /// <summary>The tree is whole: levels follow on each other, and a leaf is a package or not split, never both.</summary>
    private static void AssertTree(ReadMap map)
    {
        Assert.True(map.Levels.Count > 0);
        for (var i = 0; i < map.Levels.Count; i++)
        {
            Assert.InRange(
                map.Levels[i],
                i == 0 ? 1 : 2,
                i == 0 ? 1 : Math.Min(map.LevelNames.Count, map.Levels[i - 1] + 1)
            );
            var isLeaf = i + 1 == map.Levels.Count || map.Levels[i + 1] <= map.Levels[i];
            Assert.Equal(isLeaf, (map.Flags[i] & 3) is 1 or 2);
            Assert.Equal(!isLeaf, (map.Flags[i] & 3) == 0);
            Assert.True((map.Flags[i] & 8) == 0 || (map.Flags[i] & 1) == 1);
            Assert.InRange(map.Accounts[i], -1, map.AccountCodes.Count - 1);
        }
    }

    private ReadOnlySpan<byte> Next(int length)
    {
        at += length;
        return bytes.AsSpan(at - length, length);
    }

    private int Byte() => Next(1)[0];

    private int UInt16() => BinaryPrimitives.ReadUInt16LittleEndian(Next(2));

    private uint UInt32() => BinaryPrimitives.ReadUInt32LittleEndian(Next(4));

    private int Int32() => BinaryPrimitives.ReadInt32LittleEndian(Next(4));

    private long Int64() => BinaryPrimitives.ReadInt64LittleEndian(Next(8));

    private double Double() => BinaryPrimitives.ReadDoubleLittleEndian(Next(8));

    private T[] Column<T>(int count, Func<T> read)
    {
        Align();
        var values = new T[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = read();
        }

        return values;
    }

    private string[] Texts(int count)
    {
        uint[] offsets = Column(count + 1, UInt32);
        Assert.Equal(0u, offsets[0]);
        Align();
        var start = at;
        Next((int)offsets[count]);
        var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
        var texts = new string[count];
        for (var i = 0; i < count; i++)
        {
            var length = (int)(offsets[i + 1] - offsets[i]);
            texts[i] = strict.GetString(bytes, start + (int)offsets[i], length);
        }

        return texts;
    }

    private void Align()
    {
        while (at % 8 != 0)
        {
            Assert.Equal(0, Byte());
        }
    }

    private void AssertEnd() => Assert.Equal(bytes.Length, at);
}

/// <summary>A project document as it was read.</summary>
internal sealed record ReadMap(
    long Revision,
    string Currency,
    int Decimals,
    IReadOnlyList<string> LevelNames,
    IReadOnlyList<double> Budgets,
    IReadOnlyList<double> Hours,
    IReadOnlyList<double> Gaps,
    IReadOnlyList<double> GapsInHours,
    IReadOnlyList<int> Accounts,
    IReadOnlyList<int> Levels,
    IReadOnlyList<int> Flags,
    IReadOnlyList<string> Codes,
    IReadOnlyList<string> Names,
    IReadOnlyList<string> AccountCodes
);

/// <summary>A lens document as it was read.</summary>
internal sealed record ReadLens(long Revision, int Classes, bool IsMix, IReadOnlyList<int> ClassOf);
