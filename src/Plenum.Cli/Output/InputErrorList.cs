using System.Globalization;
using Plenum.Core.Foundation;

namespace Plenum.Cli.Output;

/// <summary>Tells what is wrong with an input.</summary>
internal static class InputErrorList
{
    public static void WriteJson(TextWriter output, InputErrors errors) =>
        JsonAnswer.Write(
            output,
            json =>
            {
                json.WriteStartArray("errors");
                foreach (var error in errors.Items)
                {
                    json.WriteStartObject();
                    json.WriteString("file", error.File);
                    json.Number("row", error.Row);
                    json.WriteString("column", error.Column);
                    json.WriteString("value", error.Value);
                    json.WriteString("expected", error.Expected);
                    json.WriteString("message", error.Message);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteNumber("error_count", errors.Count);
            }
        );

    public static void WriteText(TextWriter output, InputErrors errors)
    {
        foreach (var error in errors.Items)
        {
            output.WriteLine(error.ToString());
        }

        if (errors.Count > errors.Items.Count)
        {
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"… and {errors.Count - errors.Items.Count} more"
                )
            );
        }

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{errors.Count} {(errors.Count == 1 ? "error" : "errors")}; nothing has changed."
            )
        );
    }
}
