namespace Plenum.Workbench.Words;

/// <summary>Words for how an element is split.</summary>
public static class SplitWords
{
    /// <summary>The split logic as it is shown; a project's own logic stands as the project names it.</summary>
    public static string Of(string split) => split == "part" ? "physical part" : split;
}
