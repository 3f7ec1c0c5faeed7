namespace Plenum.Store;

/// <summary>Which state of which file a value was read from, or written to.</summary>
/// <param name="Project">The project; never changes.</param>
/// <param name="Revision">Counts the commands.</param>
/// <param name="Token">Drawn anew by every commit, so that two histories with the same count can be told apart.</param>
/// <param name="ChangeCounter">SQLite's counter in the header, which every program that writes moves.</param>
/// <param name="Length">Length of the database in bytes.</param>
internal readonly record struct Stamp(
    Guid Project,
    long Revision,
    Guid Token,
    uint ChangeCounter,
    long Length
);
