using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Words;

/// <summary>The main reading of the network as one plain sentence.</summary>
public static class NetworkSentence
{
    public static string Of(NetworkAnswer answer)
    {
        if (answer.Finish is not { } finish)
        {
            return "There is no activity yet, so there are no dates.";
        }

        var critical =
            answer.CriticalCount == 1
                ? "1 activity is critical"
                : $"{Amounts.Count(answer.CriticalCount)} activities are critical";
        var tight = answer.CriticalFloat is < 0 and { } days
            ? $" and {Amounts.Count(-days)} working days too late"
            : "";
        return $"By its logic the work ends on {Amounts.Day(finish)}. {critical}{tight}; the chain that drives the end has {Amounts.Count(answer.Chain.Count)} {(answer.Chain.Count == 1 ? "station" : "stations")}.";
    }
}
