using System.Buffers;

namespace Plenum.Workbench.Maps;

/// <summary>
/// The lens document of the map: one class for every element. The layout, byte by byte, stands beside the map that
/// reads it (src/Plenum.Web/wwwroot/map/README.md). Shares are never written: the map sums a mix itself, in the
/// measure that it shows.
/// </summary>
public static class LensDocument
{
    private const int MixBit = 1;

    /// <summary>Writes the document.</summary>
    public static void Write(Lens lens, IBufferWriter<byte> output)
    {
        var writer = new DocumentWriter(output);
        writer.Bytes("PLLN"u8);
        writer.UInt16(MapDocument.Version);
        writer.Byte(lens.Legend.Classes.Count);
        writer.Byte(lens.IsMix ? MixBit : 0);
        writer.Int64(lens.Revision);
        writer.UInt32(lens.ClassOf.Length);
        writer.Column(lens.ClassOf);
    }

    /// <summary>Writes the document to a stream, synchronously.</summary>
    public static void Write(Lens lens, Stream stream) =>
        StreamOutput.Write(stream, output => Write(lens, output));
}
