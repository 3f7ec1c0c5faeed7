using Plenum.Oracle.Tables;

namespace Plenum.Oracle.Generator;

/// <summary>Makes up small valid projects that use everything that the measures of earned value depend on.</summary>
public static class ProjectGenerator
{
    /// <summary>The project of a seed: 5 to 60 elements, 1 to 40 packages, up to 10 accounts, 1 to 12 periods.</summary>
    public static TextProject Project(long seed)
    {
        var draft = new Draft(new Dice(seed));
        FrameGenerator.AddTo(draft);
        BreakdownGenerator.AddTo(draft);
        PlanGenerator.AddTo(draft);
        BreakdownGenerator.AddGroupings(draft);
        new StatusGenerator(draft).AddTo();
        CostGenerator.AddTo(draft);

        // The order of rows says nothing in any table.
        foreach (var table in draft.Text.TableNames.ToList())
        {
            draft.Text.Reorder(table, draft.Dice.Shuffled(draft.Text.Rows(table).Count));
        }

        return draft.Text;
    }
}
