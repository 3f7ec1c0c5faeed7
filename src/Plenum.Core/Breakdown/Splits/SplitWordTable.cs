using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Splits;

/// <summary>Words of the project's own from which the logic of a split is read.</summary>
public static class SplitWordTable
{
    /// <summary>A word that says nothing of the logic.</summary>
    public const int Ignored = SplitLogic.Count;

    /// <summary>What comes after it only describes what comes before: valves <em>for</em> pumps.</summary>
    public const int Divider = SplitLogic.Count + 1;

    /// <summary>Joins two names: walls <em>and</em> roof.</summary>
    public const int Joiner = SplitLogic.Count + 2;

    /// <summary>An ending that a word may have: s; or, with what stands in its place, ies=y.</summary>
    public const int Ending = SplitLogic.Count + 3;

    /// <summary>Strength of a word where none is given.</summary>
    public const int UsualStrength = 3;

    public static readonly WordCodec Roles = new(
        "phase",
        "part",
        "function",
        "place",
        "discipline",
        "organisation",
        "contract",
        "ignored",
        "divider",
        "joiner",
        "ending"
    );

    public static readonly ColumnDefinition Word = Layout.Text(
        "word",
        "A word or several; with * at its end the beginning of words.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Role = Layout.Word(
        "role",
        Roles,
        "The logic that it stands for; or what it does in a name: ignored, divider, joiner, ending.",
        required: true,
        key: true
    );

    public static readonly ColumnDefinition Strength = Layout.Whole(
        "strength",
        "1 weak to 3 strong; 0 takes the word out of the list that comes with the program; 3 where none is given.",
        0,
        3
    );

    public static readonly TableDefinition Definition = new(
        "split_words",
        "A word from which the logic of a split is read.",
        Word,
        Role,
        Strength
    );
}
