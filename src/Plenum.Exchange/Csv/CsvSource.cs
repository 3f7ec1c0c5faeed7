using Plenum.Core.Foundation;

namespace Plenum.Exchange.Csv;

/// <summary>A CSV file: UTF-8 with or without byte order mark, a header row, comma, semicolon or tab between cells.</summary>
internal sealed class CsvSource(string path)
    : TableSource(Path.GetFileNameWithoutExtension(path), path)
{
    public override long? Bytes
    {
        get
        {
            var file = new FileInfo(FilePath);
            return file.Exists ? file.Length : null;
        }
    }

    public override RowReader? Open(InputErrors errors)
    {
        Stream? stream = null;
        try
        {
            stream = new FileStream(
                FilePath,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete,
                bufferSize: 0,
                FileOptions.SequentialScan
            );
            var reader = Open(stream, errors);
            stream = null;
            return reader;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors.Add(File, "a file that can be read", $"the file cannot be read: {e.Message}");
            return null;
        }
        finally
        {
            stream?.Dispose();
        }
    }

    private CsvRows? Open(Stream stream, InputErrors errors)
    {
        var text = new Utf8Text(stream);
        if (CsvStart.Complaint(text.Block) is var (expected, message))
        {
            errors.Add(File, expected, message);
            text.Dispose();
            return null;
        }

        var records = new CsvRecords(
            File,
            text,
            stream.Length,
            CsvStart.Separator(text.Block),
            errors
        );
        var header =
            records.Next() == RecordState.Whole ? Headings.Read(File, records.Cells(), errors)
            : records.Row == 0 ? Headings.Read(File, [], errors)
            : null;
        if (header is null)
        {
            records.Dispose();
            return null;
        }

        records.Headings = header;
        return new CsvRows(File, records, header, errors);
    }
}
