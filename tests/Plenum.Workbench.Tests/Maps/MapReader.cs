using System.Text;

namespace Plenum.Workbench.Tests.Maps;

/// <summary>
/// Reads the documents of the map field by field, by what the map's own page says of them and by nothing else. It
/// stops at the first thing that breaks the contract.
/// </summary>
internal sealed class MapReader
{
    private readonly byte[] bytes;
    private readonly BinaryReader reader;

    private MapReader(byte[] bytes, string magic)
    {
        this.bytes = bytes;
        reader = new BinaryReader(new MemoryStream(bytes));
        Assert.Equal(magic, Encoding.ASCII.GetString(reader.ReadBytes(4)));
        Assert.Equal(1, reader.ReadUInt16());
    }

    public static ReadMap Map(byte[] bytes)
    {
        var document = new MapReader(bytes, "PLMP");
        var reader = document.reader;
        int levels = reader.ReadByte();
        int decimals = reader.ReadByte();
        var revision = reader.ReadInt64();
        var count = (int)reader.ReadUInt32();
        var accounts = (int)reader.ReadUInt32();
        var currency = Encoding.ASCII.GetString(reader.ReadBytes(3));
        Assert.Equal(0, reader.ReadByte());
        var levelNames = new string[levels];
        for (var level = 0; level < levels; level++)
        {
            levelNames[level] = Encoding.UTF8.GetString(reader.ReadBytes(reader.ReadUInt16()));
        }

        var map = new ReadMap(
            revision,
            currency,
            decimals,
            levelNames,
            document.Column(count, reader.ReadDouble),
            document.Column(count, reader.ReadDouble),
            document.Column(count, reader.ReadDouble),
            document.Column(count, reader.ReadDouble),
            document.Column(count, reader.ReadInt32),
            document.Column(count, () => (int)reader.ReadByte()),
            document.Column(count, () => (int)reader.ReadByte()),
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
        var reader = document.reader;
        int classes = reader.ReadByte();
        int bits = reader.ReadByte();
        Assert.InRange(bits, 0, 1);
        var revision = reader.ReadInt64();
        var count = (int)reader.ReadUInt32();
        var classOf = document.Column(count, () => (int)reader.ReadByte());
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
        uint[] offsets = Column(count + 1, reader.ReadUInt32);
        Assert.Equal(0u, offsets[0]);
        Align();
        var start = (int)reader.BaseStream.Position;
        reader.BaseStream.Position += offsets[count];
        var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    strict.GetString(
                        bytes,
                        start + (int)offsets[i],
                        (int)(offsets[i + 1] - offsets[i])
                    )
                ),
        ];
    }

    private void Align()
    {
        while (reader.BaseStream.Position % 8 != 0)
        {
            Assert.Equal(0, reader.ReadByte());
        }
    }

    private void AssertEnd() => Assert.Equal(bytes.Length, reader.BaseStream.Position);
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
