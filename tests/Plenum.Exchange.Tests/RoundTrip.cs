using System.Globalization;
using CsCheck;

namespace Plenum.Exchange.Tests;

/// <summary>What is written reads back as the same text cells, whatever it is.</summary>
public sealed class RoundTrip
{
    /// <summary>A cell to write and the text that has to come back.</summary>
    private sealed record Cell(Action<TablesWriter> Write, string Text);

    private static readonly string[] Pieces =
    [
        "\"",
        "\"\"",
        ",",
        ";",
        "\t",
        "\r",
        "\n",
        "\r\n",
        " ",
        "  ",
        "=",
        "-",
        "'",
        "x",
        "1",
        "0.50",
        "A",
        "2026-03-31",
        "TRUE",
        "#N/A",
        "ä",
        "€",
        "😀",
        "\uFEFF",
        "\u00A0",
        "\u2028",
        "\u0085",
        "<",
        "&",
        "]]>",
        "_",
        "_x",
        "_x0041_",
        "_x000D",
        "_X00e9_",
        "\u0001",
        "\u001F",
        "\u007F",
        "\uFFFE",
        "\uFFFF",
    ];

    private static readonly Gen<string> Texts = Gen.Frequency(
        (
            8,
            Gen.Int[0, Pieces.Length - 1]
                .Select(piece => Pieces[piece])
                .Array[0, 8]
                .Select(string.Concat)
        ),
        (
            1,
            Gen.Int[0, Pieces.Length - 1]
                .Select(piece => Pieces[piece])
                .Array[0, 200]
                .Select(string.Concat)
        ),
        (1, Gen.String.AlphaNumeric)
    );

    private static readonly Gen<Cell> Cells = Gen.Frequency(
        (5, Texts.Select(text => new Cell(writer => writer.Text(text), text))),
        (1, Gen.Const(new Cell(writer => writer.Empty(), ""))),
        (
            2,
            Gen.Decimal.Select(number => new Cell(
                writer => writer.Number(number),
                number.ToString("0.############################", CultureInfo.InvariantCulture)
            ))
        ),
        (
            2,
            Gen.Int[-10_000_000, 10_000_000]
                .Select(Gen.Int[0, 4])
                .Select(
                    (whole, scale) =>
                    {
                        var number = new decimal(Math.Abs(whole), 0, 0, whole < 0, (byte)scale);
                        return new Cell(
                            writer => writer.Number(number),
                            number.ToString("0.####", CultureInfo.InvariantCulture)
                        );
                    }
                )
        ),
        (
            1,
            Gen.Int[0, DateOnly.MaxValue.DayNumber]
                .Select(DateOnly.FromDayNumber)
                .Select(day => new Cell(
                    writer => writer.Date(day),
                    day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                ))
        )
    );

    private static readonly Gen<Cell[][]> Tables = Gen.Int[1, 6]
        .SelectMany(columns => Cells.Array[columns].Array[0, 20]);

    [Fact]
    public void Csv_gives_back_every_cell() =>
        Tables.Sample(
            rows => Check(rows, desk => new CsvTablesWriter(desk.Folder), "table.csv"),
            iter: 1_000
        );

    [Fact]
    public void A_workbook_gives_back_every_cell() =>
        Tables.Sample(
            rows =>
                Check(rows, desk => new XlsxTablesWriter(desk.PathOf("plant.xlsx")), "plant.xlsx"),
            iter: 300
        );

    private static void Check(Cell[][] rows, Func<Desk, TablesWriter> open, string file)
    {
        using var desk = new Desk();
        // The first heading is one that would mislead about the separator were it not quoted.
        var columns = rows.Length == 0 ? 1 : rows[0].Length;
        string[] header =
        [
            .. Enumerable
                .Range(0, columns)
                .Select(column => column == 0 ? "x_;;\t\t;;" : $"x_{column}"),
        ];
        using (var writer = open(desk))
        {
            writer.StartTable("table", header);
            foreach (var row in rows)
            {
                foreach (var cell in row)
                {
                    cell.Write(writer);
                }

                writer.EndRow();
            }

            writer.Finish();
        }

        using var reader = desk.Open(desk.PathOf(file));
        Assert.Equal(header, reader.Header);
        for (var row = 0; row < rows.Length; row++)
        {
            string[] expected = [.. rows[row].Select(cell => cell.Text)];
            // A row of nothing but white space is skipped and counted.
            if (!expected.All(string.IsNullOrWhiteSpace))
            {
                Assert.True(reader.Read());
                Assert.Equal(expected, Desk.Cells(reader));
                Assert.Equal(row + 2, reader.Row);
            }
        }

        Assert.False(reader.Read());
        Assert.False(reader.Failed);
        Assert.False(desk.Errors.Any);
    }
}
