using Plenum.Core.Scope;
using Plenum.Workbench.Maps;

namespace Plenum.Web.Shell;

/// <summary>Which lenses of the map a chapter offers; the first is its own.</summary>
/// <param name="Word">The lens's word.</param>
/// <param name="Name">Its name beside the others of the chapter.</param>
public sealed record LensChoice(string Word, string Name)
{
    private static readonly LensChoice[] Accounts =
    [
        new(LensQuestion.Cost, "Cost variance as a share of earned value"),
        new(LensQuestion.Schedule, "Schedule variance as a share of planned value"),
        new(LensQuestion.Completion, "Variance at completion as a share of the budget"),
        new(LensQuestion.Status, "Status reported for this period"),
    ];

    private static readonly LensChoice[] Breakdown =
    [
        new(LensQuestion.Breakdown, "How each element is split, and what the audit found"),
        new(LensQuestion.Precision, "How closely the status of each account is known"),
    ];

    private static readonly LensChoice[] Parts =
    [
        new(LensQuestion.Parts, "Parts with every activity decided, or not yet"),
        .. Breakdown,
    ];

    private static readonly LensChoice[] Estimate =
    [
        new(LensQuestion.Estimate, "How well the estimate is defined, as a mix"),
        new(LensQuestion.Breakdown, "How each element is split, and what the audit found"),
    ];

    private static readonly LensChoice[] Network =
    [
        new(LensQuestion.Network, "Total float in working days, tightest inside"),
    ];

    private static readonly LensChoice[] Scope =
    [
        new(LensQuestion.Scope, "Which parts the scope statement asks for"),
    ];

    private static readonly LensChoice[] People =
    [
        new(LensQuestion.People, "Who answers for each part"),
    ];

    /// <summary>The lenses of the chapter that is open.</summary>
    public static IReadOnlyList<LensChoice> Of(Sheet sheet) =>
        sheet.Chapter switch
        {
            "scope" => Scope,
            "breakdown" => sheet.Place.Length > 0 ? Parts : Breakdown,
            "estimate" => Estimate,
            "people" => People,
            "network" => Network,
            _ => Accounts,
        };

    /// <summary>The lens that the address names, or the chapter's own.</summary>
    public static LensChoice Chosen(Sheet sheet)
    {
        var choices = Of(sheet);
        return choices.FirstOrDefault(choice => choice.Word == sheet.Value("lens")) ?? choices[0];
    }

    /// <summary>What is asked of the workbench for it.</summary>
    public LensQuestion Question(Sheet sheet) =>
        new(
            Word,
            Word
                is LensQuestion.Scope
                    or LensQuestion.Breakdown
                    or LensQuestion.People
                    or LensQuestion.Network
                    or LensQuestion.Parts
                    or LensQuestion.Estimate
                ? null
                : sheet.At,
            Word == LensQuestion.People ? sheet.Value("person") : null,
            Word == LensQuestion.Scope ? ItemOf(sheet) : null
        );

    /// <summary>The scope item that the address names, if there is one.</summary>
    private static string? ItemOf(Sheet sheet) =>
        sheet.Value("item") is { } item
        && sheet.Project?[ScopeTable.Definition].RowOfCode(item) >= 0
            ? item
            : null;
}
