using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Splits;

/// <summary>The logics by which an element can be split, as numbers of <see cref="Names"/>.</summary>
public static class SplitLogic
{
    public const int Phase = 0;
    public const int Part = 1;
    public const int Function = 2;
    public const int Place = 3;
    public const int Discipline = 4;
    public const int Organisation = 5;
    public const int Contract = 6;

    /// <summary>How many there are.</summary>
    public const int Count = 7;

    /// <summary>None is known.</summary>
    public const int Unknown = -1;

    public static readonly WordCodec Names = new(
        "phase",
        "part",
        "function",
        "place",
        "discipline",
        "organisation",
        "contract"
    );

    /// <summary>
    /// Logics that share so many names that a name cannot tell them apart: a pump is a part and serves a function, a
    /// hall is a part and a place, electrical work is a function of the plant and a branch of engineering.
    /// </summary>
    public static bool AreNear(int one, int other) =>
        one == other
        || (Math.Min(one, other), Math.Max(one, other))
            is (Part, Function)
                or (Part, Place)
                or (Part, Discipline)
                or (Function, Discipline)
                or (Phase, Function)
                or (Phase, Discipline)
                or (Function, Organisation);
}
