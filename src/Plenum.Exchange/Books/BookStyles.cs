using System.Drawing;
using SpreadCheetah;
using SpreadCheetah.Styling;

namespace Plenum.Exchange.Books;

/// <summary>The looks of cells in a workbook, each made once.</summary>
internal sealed class BookStyles(Spreadsheet workbook)
{
    private const int MostIndent = 15;

    private static readonly Color KeyGround = Color.FromArgb(0xE4, 0xE2, 0xDA);
    private static readonly Color HeadingGround = Color.FromArgb(0xD8, 0xD5, 0xCB);
    private static readonly Color OpenGround = Color.FromArgb(0xF4, 0xE0, 0xC3);
    private static readonly Color Quiet = Color.FromArgb(0x59, 0x64, 0x6C);

    private readonly Dictionary<(BookColumnKind, BookMark, bool, int), StyleId> made = [];
    private StyleId? heading;

    public StyleId Heading =>
        heading ??= workbook.AddStyle(
            new Style
            {
                Font = new Font { Bold = true },
                Fill = new Fill { Color = HeadingGround },
                Format = NumberFormat.Standard(StandardNumberFormat.Text),
                Alignment = new Alignment { Vertical = VerticalAlignment.Top, WrapText = true },
            }
        );

    public StyleId Of(BookColumnKind kind, BookMark mark, bool bold, int level)
    {
        var indent = kind == BookColumnKind.Name ? Math.Min(level - 1, MostIndent) : 0;
        var key = (kind, mark, bold && kind == BookColumnKind.Name, indent);
        if (!made.TryGetValue(key, out var style))
        {
            made[key] = style = Make(kind, mark, key.Item3, indent);
        }

        return style;
    }

    private StyleId Make(BookColumnKind kind, BookMark mark, bool bold, int indent)
    {
        var isKey = kind is BookColumnKind.Key or BookColumnKind.Shown;
        var style = new Style
        {
            Font = new Font
            {
                Bold = bold,
                Color = isKey || mark == BookMark.Settled ? Quiet : null,
            },
            Fill = new Fill
            {
                Color =
                    isKey || mark == BookMark.Settled ? KeyGround
                    : mark == BookMark.Open ? OpenGround
                    : null,
            },
            Alignment = new Alignment
            {
                Vertical = VerticalAlignment.Top,
                WrapText = kind == BookColumnKind.Lines,
                Horizontal = indent > 0 ? HorizontalAlignment.Left : HorizontalAlignment.None,
                Indent = indent,
            },
            Format =
                kind == BookColumnKind.Number
                    ? NumberFormat.Custom("#,##0.00")
                    : NumberFormat.Standard(StandardNumberFormat.Text),
        };
        return workbook.AddStyle(style);
    }
}
