using System.Numerics;

namespace Plenum.Core.Foundation.Tables;

/// <summary>Finds a row by its key: open addressing over row numbers, linear probing, at most half full.</summary>
public sealed class KeyIndex
{
    private readonly Column[] keys;
    private int[] slots;
    private int count;

    private KeyIndex(Column[] keys, int capacity)
    {
        this.keys = keys;
        slots = NewSlots(capacity);
    }

    /// <summary>Index over all rows of the key columns; of equal keys the first row counts.</summary>
    public static KeyIndex Over(params Column[] keys)
    {
        var rows = keys.Length == 0 ? 0 : keys[0].Count;
        var index = new KeyIndex(keys, rows);
        for (var row = 0; row < rows; row++)
        {
            index.AddOrFind(row);
        }

        return index;
    }

    /// <summary>Index over key columns, with nothing in it yet.</summary>
    public static KeyIndex Empty(params Column[] keys) =>
        new(keys, keys.Length == 0 ? 0 : keys[0].Count);

    /// <summary>Adds a row; returns the row that has the same key already, or the row itself.</summary>
    public int AddOrFind(int row)
    {
        if ((count + 1) * 2 > slots.Length)
        {
            Grow();
        }

        for (var slot = SlotOf(keys, row); ; slot = (slot + 1) & (slots.Length - 1))
        {
            var found = slots[slot];
            if (found < 0)
            {
                slots[slot] = row;
                count++;
                return row;
            }

            if (Same(found, keys, row))
            {
                return found;
            }
        }
    }

    /// <summary>The row with the key that another table's row has, or −1.</summary>
    public int Find(Column[] otherKeys, int otherRow)
    {
        for (var slot = SlotOf(otherKeys, otherRow); ; slot = (slot + 1) & (slots.Length - 1))
        {
            var found = slots[slot];
            if (found < 0 || Same(found, otherKeys, otherRow))
            {
                return found;
            }
        }
    }

    private static int[] NewSlots(int rows)
    {
        var empty = new int[Math.Max(8, (int)BitOperations.RoundUpToPowerOf2((uint)rows * 2))];
        empty.AsSpan().Fill(-1);
        return empty;
    }

    private void Grow()
    {
        var old = slots;
        slots = NewSlots(old.Length);
        foreach (var row in old)
        {
            if (row >= 0)
            {
                var slot = SlotOf(keys, row);
                while (slots[slot] >= 0)
                {
                    slot = (slot + 1) & (slots.Length - 1);
                }

                slots[slot] = row;
            }
        }
    }

    private int SlotOf(Column[] columns, int row)
    {
        var hash = 0u;
        foreach (var column in columns)
        {
            hash = unchecked(
                (BitOperations.RotateLeft(hash, 7) ^ (uint)column.HashAt(row)) * 0x9E3779B1u
            ); // wraps on purpose: a hash
        }

        return (int)((hash ^ (hash >> 15)) & (uint)(slots.Length - 1));
    }

    private bool Same(int row, Column[] otherKeys, int otherRow)
    {
        for (var key = 0; key < keys.Length; key++)
        {
            if (!keys[key].SameAt(row, otherKeys[key], otherRow))
            {
                return false;
            }
        }

        return true;
    }
}
