using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Plenum.Cli.Output;
using Plenum.Core.Breakdown;
using Plenum.Workbench.Questions;

namespace Plenum.Cli.Commands;

/// <summary><c>plenum scope PROJECT [--at DATE]</c></summary>
internal static class ScopeCommand
{
    private const int WidestText = 60;
    private const int MostParts = 6;

    private static readonly Option<string?> At = new("--at")
    {
        Description =
            "Ages of queries are counted at this date (2026-03-31); the status date by default.",
        HelpName = "DATE",
    };

    public static Command Build(CliContext context)
    {
        var command = new Command(
            "scope",
            "The scope statement against the breakdown: what has no part, and which parts nobody asked for."
        )
        {
            CommonOptions.Project,
            At,
            CommonOptions.Json,
        };
        return command.Answers<ScopeAnswer>(
            context,
            parsed => new ScopeQuestion(CliContext.ParseDate(parsed.GetValue(At))).Ask,
            WriteJson,
            WriteText
        );
    }

    private static void WriteJson(CliContext context, ScopeAnswer answer) =>
        JsonAnswer.Write(
            context.Out,
            json =>
            {
                json.Date("at", answer.At);
                json.WriteNumber("revision", answer.Revision);
                json.WriteString("currency", answer.Currency.Code);
                json.WriteNumber("covered", answer.Count(Coverage.Covered));
                json.WriteNumber("partly", answer.Count(Coverage.Partly));
                json.WriteNumber("not_covered", answer.Count(Coverage.None));
                Each(json, "rows", answer.Lines, WriteLine);
                Each(json, "nobody_asked", answer.NobodyAsked, WritePart);
                Texts(
                    json,
                    "exclusions_answered",
                    answer.AnsweredExclusions.Select(line => line.Item)
                );
                Each(json, "scope_revisions", answer.Revisions, WriteRevision);
                WriteDraft(json, answer.Draft);
                Each(json, "queries", answer.Queries, WriteQuery);
            }
        );

    private static void WriteLine(Utf8JsonWriter json, ScopeLine line)
    {
        json.WriteString("item", line.Item);
        json.WriteString("parent", line.Parent);
        json.WriteString("kind", line.Kind);
        json.WriteString("text", line.Text);
        json.WriteString("clause", line.Clause);
        json.WriteString("coverage", Word(line.Coverage));
        Texts(json, "elements", line.Parts);
        Texts(json, "open_phrases", line.Unanswered);
        json.WriteString("scope_revision", line.Revision);
        json.WriteString("withdrawn", line.Withdrawn);
    }

    private static void WritePart(Utf8JsonWriter json, PartLine part)
    {
        json.WriteString("code", part.Code);
        json.WriteString("name", part.Name);
        json.Money("budget", part.Budget);
    }

    private static void WriteRevision(Utf8JsonWriter json, ScopeRevisionLine revision)
    {
        json.WriteString("code", revision.Code);
        json.Date("signed", revision.Signed);
        json.WriteString("note", revision.Note);
    }

    private static void WriteDraft(Utf8JsonWriter json, DraftChanges? draft)
    {
        if (draft is null)
        {
            json.WriteNull("draft");
            return;
        }

        json.WriteStartObject("draft");
        json.WriteString("code", draft.Code);
        Texts(json, "changed", draft.Changed);
        Texts(json, "added", draft.Added);
        Texts(json, "withdrawn", draft.Withdrawn);
        Texts(json, "elements", draft.Parts);
        json.WriteEndObject();
    }

    private static void WriteQuery(Utf8JsonWriter json, QueryLine query)
    {
        json.WriteString("query", query.Query);
        json.WriteString("item", query.Item);
        json.WriteString("text", query.Text);
        json.Date("asked", query.Asked);
        json.WriteString("asked_by", query.AskedBy);
        json.WriteString("answer", query.Answer);
        json.Date("answered", query.Answered);
        json.Number("age_days", query.AgeDays);
    }

    private static void Each<T>(
        Utf8JsonWriter json,
        string name,
        IEnumerable<T> rows,
        Action<Utf8JsonWriter, T> write
    )
    {
        json.WriteStartArray(name);
        foreach (var row in rows)
        {
            json.WriteStartObject();
            write(json, row);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static string? Word(Coverage? coverage) =>
        coverage switch
        {
            Coverage.Covered => "covered",
            Coverage.Partly => "partly",
            Coverage.None => "not_covered",
            _ => null,
        };

    private static void WriteText(CliContext context, ScopeAnswer answer)
    {
        var output = context.Out;
        output.WriteLine($"{ScopeWords.Title(answer)}, {ScopeWords.State(answer)}.");
        output.WriteLine(ScopeWords.Sentence(answer));
        if (answer.Lines.Count > 0)
        {
            WriteItems(output, answer);
        }

        if (answer.NobodyAsked.Count > 0)
        {
            output.WriteLine(
                "Nobody asked for these. Either an item is missing, or the work should go:"
            );
            foreach (var part in answer.NobodyAsked)
            {
                output.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"  {part.Code} {part.Name}, {answer.Currency.Code} {part.Budget:#,0.##}"
                    )
                );
            }
        }

        if (answer.Draft is { } draft)
        {
            output.WriteLine($"Revision {draft.Code} is in draft. {ScopeWords.Changes(draft)}");
        }

        foreach (var query in answer.Queries.Where(query => query.IsOpen))
        {
            output.WriteLine(
                $"Open query {query.Query}{(query.Item is { } item ? $" about {item}" : "")}: {query.Text} {ScopeWords.Age(query)}."
            );
        }
    }

    private static void WriteItems(TextWriter output, ScopeAnswer answer)
    {
        var table = new TextTable("Item", "Wording", "Answered by", "Parts");
        foreach (var line in answer.Lines)
        {
            table.Row(
                line.Item,
                TextTable.Cut(line.Text.ReplaceLineEndings(" "), WidestText),
                ScopeWords.Verdict(line),
                string.Join(", ", line.Parts.Take(MostParts))
                    + (line.Parts.Count > MostParts ? ", …" : "")
            );
        }

        table.Write(output);
    }
}
