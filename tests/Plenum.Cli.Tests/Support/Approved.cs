namespace Plenum.Cli.Tests.Support;

/// <summary>
/// Compares what people read with a text file that a person has approved. Where the file is missing or differs, what
/// was received is written beside it and the test fails; only a person makes a received file an approved one.
/// </summary>
internal static class Approved
{
    private static readonly string Folder = Path.Combine(Repository.Tests, "Approved");

    public static void Is(string name, string received)
    {
        var approved = Path.Combine(Folder, name + ".txt");
        var beside = Path.Combine(Folder, name + ".received.txt");
        var text =
            string.Join('\n', received.Split('\n').Select(line => line.TrimEnd())).Trim('\n')
            + "\n";
        var expected = File.Exists(approved)
            ? File.ReadAllText(approved).ReplaceLineEndings("\n")
            : null;
        if (text == expected)
        {
            File.Delete(beside);
            return;
        }

        File.WriteAllText(beside, text);
        Assert.Equal(
            expected ?? $"there is no {approved}; read {beside} and rename it if it is right",
            text
        );
    }
}
