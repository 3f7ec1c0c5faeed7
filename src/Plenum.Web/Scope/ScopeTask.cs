namespace Plenum.Web.Scope;

/// <summary>What somebody is doing to the scope statement; one thing at a time has a form.</summary>
public enum ScopeTask
{
    None,

    /// <summary>Write an item beside the picked one, or the first.</summary>
    Write,

    /// <summary>Write an item below the picked one.</summary>
    WriteBelow,
    Change,
    Paste,
    Trace,
    AddPart,
    Query,
    Answer,

    /// <summary>Begin a revision.</summary>
    Revise,
    Sign,
}
