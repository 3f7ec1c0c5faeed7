using System.Globalization;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Core.Breakdown.Audit;

/// <summary>Something is promised later than it is needed.</summary>
public sealed class InterfaceRule(Table register) : PlaceRule
{
    public override string Name => "interface_late";

    public override Severity Severity => Severity.Warning;

    public override string Explanation =>
        "At an interface one gives what the other needs. Promised after it is needed, it holds up the receiver.";

    public override string Remedy => "Have the date brought forward, or plan around it.";

    public override string Source => "common practice";

    public override int Places => register.Count;

    public override IEnumerable<Finding> At(int place)
    {
        var needed = register.Ints(RegisterTable.NeedBy)[place];
        var promised = register.Ints(RegisterTable.Promised)[place];
        if (Cell.IsGiven(needed) && Cell.IsGiven(promised) && promised > needed)
        {
            yield return Found(
                register.Codes[place]!,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{register.Texts(RegisterTable.Text)[place]}: promised for {DateOnly.FromDayNumber(promised):yyyy-MM-dd}, needed by {DateOnly.FromDayNumber(needed):yyyy-MM-dd}."
                )
            );
        }
    }
}
