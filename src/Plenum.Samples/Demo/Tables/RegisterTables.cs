using System.Globalization;
using Plenum.Samples.Demo.Plant;
using Plenum.Samples.Foundation;

namespace Plenum.Samples.Demo.Tables;

/// <summary>register.</summary>
internal static class RegisterTables
{
    public static void Write(TableFolder tables)
    {
        var register = tables.Open(
            "register",
            "entry",
            "element",
            "kind",
            "text",
            "owner",
            "low",
            "likely",
            "high",
            "days_low",
            "days_likely",
            "days_high",
            "giver",
            "receiver",
            "need_by",
            "promised"
        );
        WriteRanges(register, "risk", "R", RegisterText.Risks);
        WriteRanges(register, "opportunity", "O", RegisterText.Opportunities);
        var number = 0;
        foreach (var line in PlantText.Lines(RegisterText.Constraints))
        {
            var cells = PlantText.Cells(line, 3);
            Begin(register, "C", ++number, "constraint", cells);
            for (var i = 0; i < 10; i++)
            {
                register.Empty();
            }
            register.EndRow();
        }
        number = 0;
        foreach (var line in PlantText.Lines(RegisterText.Interfaces))
        {
            var cells = PlantText.Cells(line, 7);
            Begin(register, "I", ++number, "interface", cells);
            for (var i = 0; i < 6; i++)
            {
                register.Empty();
            }
            register.Text(cells[3]).Text(cells[4]).Text(cells[5]).Text(cells[6]).EndRow();
        }
    }

    private static void WriteRanges(TableWriter register, string kind, string letter, string text)
    {
        const long Thousand = 1000_00;
        var number = 0;
        foreach (var line in PlantText.Lines(text))
        {
            var cells = PlantText.Cells(line, 9);
            Begin(register, letter, ++number, kind, cells);
            for (var i = 3; i < 6; i++)
            {
                register.Hundredths(PlantText.Whole(cells[i]) * Thousand);
            }
            for (var i = 6; i < 9; i++)
            {
                register.Text(cells[i]);
            }
            register.Empty().Empty().Empty().Empty().EndRow();
        }
    }

    private static void Begin(
        TableWriter register,
        string letter,
        int number,
        string kind,
        string[] cells
    ) =>
        register
            .Text(string.Create(CultureInfo.InvariantCulture, $"{letter}-{number:00}"))
            .Text(cells[0])
            .Text(kind)
            .Text(cells[1])
            .Text(cells[2]);
}
