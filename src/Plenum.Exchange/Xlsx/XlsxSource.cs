using System.Text;
using ExcelDataReader;
using Plenum.Core.Foundation;

namespace Plenum.Exchange.Xlsx;

/// <summary>One sheet of an XLSX workbook.</summary>
internal sealed class XlsxSource : TableSource
{
    private readonly Sheet sheet;

    static XlsxSource() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    private XlsxSource(string path, Sheet sheet)
        : base(sheet.Name, path, $", sheet {sheet.Name}") => this.sheet = sheet;

    public override long? Bytes => sheet.Bytes;

    public static IEnumerable<TableSource> Find(string path, InputErrors errors)
    {
        var file = Path.GetFileName(path);
        if (Workbook.Sheets(path, file, errors) is not { } sheets)
        {
            return [];
        }

        if (sheets.Count == 0)
        {
            errors.Add(
                file,
                "a sheet for each table",
                "the workbook holds no table: fill in a sheet whose name does not begin with \"_\""
            );
        }

        return sheets.Select(sheet => new XlsxSource(path, sheet));
    }

    public override RowReader? Open(InputErrors errors)
    {
        IExcelDataReader? cells = null;
        CellFaults? faults = null;
        try
        {
            faults = CellFaults.Open(FilePath, sheet);
            cells = ExcelReaderFactory.CreateOpenXmlReader(Workbook.OpenFile(FilePath));
            for (var index = 0; index < sheet.Index; index++)
            {
                cells.NextResult();
            }

            if (cells.Name != sheet.Name)
            {
                throw new InvalidDataException("The sheets have changed.");
            }

            var rows = new SheetRows(File, cells, faults, errors);
            (cells, faults) = (null, null);
            return XlsxRows.Open(File, rows, errors);
        }
        catch (Exception e) when (Workbook.IsDamage(e))
        {
            errors.Add(File, "a whole .xlsx workbook", Workbook.Damaged(e));
            return null;
        }
        finally
        {
            cells?.Dispose();
            faults?.Dispose();
        }
    }
}
