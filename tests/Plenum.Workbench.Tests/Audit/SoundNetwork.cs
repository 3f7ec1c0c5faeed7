using Plenum.Oracle.Tables;

namespace Plenum.Workbench.Tests.Audit;

/// <summary>
/// The network of the sound project, in which the audit finds nothing: each train is designed and delivered, the hall is founded and
/// roofed, and the plant is handed over.
/// </summary>
internal static class SoundNetwork
{
    /// <summary>The sound project with its network.</summary>
    public static TextProject Make()
    {
        var text = SoundProject.Make();
        AddTo(text);
        return text;
    }

    private static void AddTo(TextProject text)
    {
        // the roof's own activities, so that there is an end
        Activity(text, "FRAME", "PLT.3.2", 20, "Set the frame");
        Activity(text, "SHEETS", "PLT.3.2", 22, "Lay the sheets");
        Activity(text, "OVER", "PLT.3.2", 0, "Plant handed over");
        for (var train = 1; train <= 3; train++)
        {
            var code = SoundProject.Number("PLT.2.", train);
            Link(text, code + ".1", code + ".2");
            Link(text, code + ".2", "OVER");
        }

        Link(text, "PLT.2.1.1", "PLT.3.1");
        Link(text, "PLT.3.1", "FRAME");
        Link(text, "FRAME", "SHEETS");
        Link(text, "SHEETS", "OVER");
        // managing the plant lasts no longer than the work
        text.Add(
            "status",
            ("package", "PLT.1"),
            ("period", "P1"),
            ("started", "2026-01-01"),
            ("remaining", "")
        );
        text.Add(
            "status",
            ("package", "PLT.1"),
            ("period", "P3"),
            ("started", ""),
            ("remaining", "40")
        );
    }

    public static TextRow Activity(
        TextProject text,
        string code,
        string package,
        int duration,
        string name
    )
    {
        var row = text.Add(
            "activities",
            ("activity", code),
            ("package", package),
            ("duration", duration.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            ("name", name)
        );
        foreach (
            var column in new[]
            {
                "start_no_earlier",
                "start_no_later",
                "finish_no_later",
                "start_on",
                "finish_on",
                "required_by",
            }
        )
        {
            row[column] = "";
        }

        return row;
    }

    public static TextRow Link(
        TextProject text,
        string from,
        string to,
        string type = "",
        string lag = ""
    ) => text.Add("links", ("from", from), ("to", to), ("type", type), ("lag", lag));
}
