using System.Globalization;
using Plenum.Core;
using Plenum.Core.Scope;

namespace Plenum.Workbench.Commands.Scope;

/// <summary>Puts a query to the client.</summary>
/// <param name="Item">Id of the item that it is about; 0 for the statement as a whole.</param>
/// <param name="Text">What is asked.</param>
/// <param name="Asked">On which day.</param>
/// <param name="By">Who asks.</param>
public sealed record AskQueryCommand(int Item, string Text, DateOnly Asked, string By) : EditCommand
{
    public override string Tell(Project before) =>
        $"ask the client{(Item == 0 ? "" : $" about scope item {ScopeItems.Number(before, Item)}")}: {ScopeItems.Short(Text)}";

    protected internal override void Apply(EditDraft draft)
    {
        var statement = new DraftStatement(draft);
        if (Item != 0)
        {
            statement.NeedItem(Item);
        }

        var last = 0;
        foreach (var id in statement.Rows(QueryTable.Definition))
        {
            var code = draft.CodeOf(QueryTable.Definition, id);
            if (
                code.StartsWith("Q-", StringComparison.Ordinal)
                && int.TryParse(
                    code.AsSpan(2),
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var number
                )
            )
            {
                last = Math.Max(last, number);
            }
        }

        var query = draft.Add(
            QueryTable.Definition,
            (QueryTable.Query, string.Create(CultureInfo.InvariantCulture, $"Q-{last + 1:00}")),
            (QueryTable.Text, Text),
            (QueryTable.Asked, Asked.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            (QueryTable.AskedBy, By)
        );
        if (Item != 0)
        {
            draft.SetReference(QueryTable.Item, query, Item);
        }
    }
}

/// <summary>Notes what the client answered.</summary>
/// <param name="Query">Id of the query.</param>
/// <param name="Answer">The answer; empty takes it back.</param>
/// <param name="Answered">On which day.</param>
/// <param name="Seen">The answer that was there when it was seen.</param>
public sealed record AnswerQueryCommand(
    int Query,
    string? Answer,
    DateOnly Answered,
    string? Seen = null
) : EditCommand
{
    public override string Tell(Project before)
    {
        var queries = before[QueryTable.Definition];
        var row = queries.RowOf(Query);
        return $"answer query {(row < 0 ? "" : queries.Codes[row])}: {ScopeItems.Short(Answer ?? "")}";
    }

    protected internal override void Apply(EditDraft draft)
    {
        if (!draft.Has(QueryTable.Definition, Query))
        {
            throw new EditException(
                "This query is no longer there; somebody has removed it.",
                "a query that is there"
            );
        }

        var answer = Answer?.Trim();
        draft.Set(QueryTable.Answer, Query, answer, Seen);
        draft.Set(
            QueryTable.Answered,
            Query,
            string.IsNullOrEmpty(answer)
                ? null
                : Answered.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
    }
}
