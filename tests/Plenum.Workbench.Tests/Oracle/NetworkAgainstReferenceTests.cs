using Plenum.Oracle.Generator;
using Plenum.Oracle.Network;
using Plenum.Workbench.Questions;

namespace Plenum.Workbench.Tests.Oracle;

/// <summary>
/// The network against an independent reference on generated networks: a constraint solver gives early and late dates, and
/// floats are found by trying. See tests/Plenum.Oracle/Network.
/// </summary>
public class NetworkAgainstReferenceTests
{
    private const int Seeds = 1_200;
    private const int Batches = 6;

    public static TheoryData<int> BatchNumbers => [.. Enumerable.Range(0, Batches)];

    [Theory]
    [MemberData(nameof(BatchNumbers))]
    public void Dates_floats_and_drivers_agree_with_the_reference(int batch) =>
        Parallel.For(
            batch * Seeds / Batches,
            (batch + 1) * Seeds / Batches,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            seed =>
            {
                var text = NetworkGenerator.Project(seed);
                var answer = new NetworkQuestion().Ask(Answers.Import(text));
                var facts = new NetworkFacts(text);
                var solved = new SolvedDates(facts);
                AssertSame(seed, facts, new TriedFloats(facts, solved), answer);
            }
        );

    private static void AssertSame(
        int seed,
        NetworkFacts facts,
        TriedFloats tried,
        NetworkAnswer answer
    )
    {
        var rows = answer.Activities.ToDictionary(row => row.Code, StringComparer.Ordinal);
        Assert.Equal(facts.Activities.Count, rows.Count);
        var driving = tried.Driving();
        for (var index = 0; index < facts.Activities.Count; index++)
        {
            var code = facts.Activities[index].Code;
            var row = rows[code];
            var early = tried.Dates(index, late: false);
            var late = tried.Dates(index, late: true);
            Same("early start", early.Start, row.EarlyStart);
            Same("early finish", early.Finish, row.EarlyFinish);
            Same("late start", late.Start, row.LateStart);
            Same("late finish", late.Finish, row.LateFinish);
            Same("total float", tried.TotalFloat(index), row.TotalFloat);
            Same("free float", tried.FreeFloat(index), row.FreeFloat);
            Same("critical", tried.IsCritical(index), row.IsCritical);
            Same("driving", driving[index], row.IsDriving);

            void Same<T>(string what, T expected, T found) =>
                Assert.True(
                    EqualityComparer<T>.Default.Equals(expected, found),
                    $"seed {seed}: {what} of {code} is {expected}, but {found} was found"
                );
        }
    }
}
