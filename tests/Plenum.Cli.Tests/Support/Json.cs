using System.Text.Json;

namespace Plenum.Cli.Tests.Support;

internal static class Json
{
    public static IEnumerable<string> NamesOf(JsonElement element) =>
        element.EnumerateObject().Select(member => member.Name);

    /// <summary>The one document that a command with --json answers with; an object.</summary>
    public static JsonElement Of(Reply reply)
    {
        Assert.Empty(reply.Error);
        using var document = JsonDocument.Parse(reply.Out);
        Assert.Equal(JsonValueKind.Object, document.RootElement.ValueKind);
        return document.RootElement.Clone();
    }
}
