using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Splits;

/// <summary>Words of the project's own from which the logic of a split is read.</summary>
public static class SplitWordTable
{
    /// <summary>A name that says nothing of what it is: other, miscellaneous.</summary>
    public const int Generic = SplitLogic.Count;

    /// <summary>What is no part of the work: a cost class, a meeting, rework.</summary>
    public const int NotAPart = SplitLogic.Count + 1;

    /// <summary>A verb at the beginning of a name makes it an activity.</summary>
    public const int Verb = SplitLogic.Count + 2;

    /// <summary>The management of the project.</summary>
    public const int Management = SplitLogic.Count + 3;

    /// <summary>Software.</summary>
    public const int Software = SplitLogic.Count + 4;

    /// <summary>A word that says nothing of the logic.</summary>
    public const int Ignored = SplitLogic.Count + 5;

    /// <summary>What comes after it only describes what comes before: valves <em>for</em> pumps.</summary>
    public const int Divider = SplitLogic.Count + 6;

    /// <summary>Joins two names: walls <em>and</em> roof.</summary>
    public const int Joiner = SplitLogic.Count + 7;

    /// <summary>An ending that a word may have: s; or, with what stands in its place, ies=y.</summary>
    public const int Ending = SplitLogic.Count + 8;

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
        "generic",
        "not_a_part",
        "verb",
        "management",
        "software",
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
        "The logic that it stands for, or what else it says or does in a name.",
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
