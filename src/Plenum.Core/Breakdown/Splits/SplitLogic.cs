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
    /// Whether a name that speaks for one logic may stand in a split that follows another without disturbing it,
    /// because names of the two cannot be told apart well enough: a pump is a part and serves a function, a hall is a
    /// part and a place, electrical work is a system of the plant and a branch of engineering.
    /// </summary>
    public static bool MayStandAmong(int logic, int split) =>
        logic == split
        || (logic, split)
            is
                (Part, Function)
                or
                (Function, Part)
                or
                (Place, Part)
                or
                (Part, Discipline)
                or
                (Discipline, Part)
                or
                (Function, Discipline)
                or
                (Discipline, Function)
                or
                (Phase, Function)
                or
                (Function, Phase)
                or
                (Phase, Discipline)
                or
                (Discipline, Phase);
}
