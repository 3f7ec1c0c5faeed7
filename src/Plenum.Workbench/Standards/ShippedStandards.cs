using System.Collections.Concurrent;
using System.Globalization;
using Plenum.Core;
using Plenum.Core.Baseline;
using Plenum.Core.Breakdown;
using Plenum.Exchange.Lists;
using Plenum.Workbench.Commands;
using Plenum.Workbench.Commands.Breakdown;

namespace Plenum.Workbench.Standards;

/// <summary>A standard breakdown, in short.</summary>
/// <param name="Key">Its name on the command line, and in what was left out of it.</param>
/// <param name="Name">Its name.</param>
/// <param name="About">What it is for.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="Elements">How many elements it has.</param>
/// <param name="Packages">How many of them are packages.</param>
/// <param name="Levels">How many levels it has.</param>
public sealed record StandardSummary(
    string Key,
    string Name,
    string About,
    string Source,
    int Elements,
    int Packages,
    int Levels
);

/// <summary>The standard breakdowns that come with the program, as projects. Each is made once, when it is asked for.</summary>
public static class ShippedStandards
{
    private static readonly ConcurrentDictionary<string, Project> Made = new(
        StringComparer.Ordinal
    );

    public static IReadOnlyList<string> Keys { get; } =
    [.. StandardText.All.Select(text => text.Key)];

    /// <summary>The standard breakdown of a name; null if there is none.</summary>
    public static Project? Find(string key) =>
        StandardText.All.FirstOrDefault(text => text.Key == key) is { } text
            ? Made.GetOrAdd(key, _ => Make(text))
            : null;

    public static StandardSummary Summary(string key)
    {
        var text = StandardText.All.First(text => text.Key == key);
        var tree = Find(key)!.Tree;
        return new StandardSummary(
            key,
            text.Name,
            text.About,
            text.Source,
            tree.Count,
            tree.PackageCount,
            tree.Depth
        );
    }

    private static Project Make(StandardText text) =>
        EditTrial.Of(Project.Empty, new MakeCommand(text)).Next;

    /// <summary>Makes a project of the text.</summary>
    private sealed record MakeCommand(StandardText Text) : EditCommand
    {
        public override string Tell(Project before) => $"make {Text.Name}";

        protected internal override void Apply(EditDraft draft)
        {
            draft.Add(
                ProjectTable.Definition,
                (ProjectTable.Key, "code"),
                (ProjectTable.Value, Text.Code)
            );
            draft.Add(
                ProjectTable.Definition,
                (ProjectTable.Key, "name"),
                (ProjectTable.Value, Text.Name)
            );
            var read = ListReader.Read(Text.List, Text.Key);
            var list = read with
            {
                Rows = [read.Rows[0] with { Code = Text.Code }, .. read.Rows.Skip(1)],
            };
            AddTypes(draft, list);
            var ids = ListIntake.Put(draft, list, 0, 0);
            draft.Set(ElementTable.Description, ids[0], $"{Text.About} Source: {Text.Source}");
            AddPackages(draft, list, ids);
        }

        private static void AddTypes(EditDraft draft, ReadList list)
        {
            foreach (var type in TypesOf(list).Distinct(StringComparer.Ordinal))
            {
                var (name, set) = WorkSetTexts.Types[type];
                draft.Add(
                    PartTypeTable.Definition,
                    (PartTypeTable.PartType, type),
                    (PartTypeTable.Name, name)
                );
                for (var order = 0; order < set.Count; order++)
                {
                    var activity = set[order];
                    draft.Add(
                        WorkSetTable.Definition,
                        (WorkSetTable.PartType, type),
                        (WorkSetTable.Activity, activity.Name),
                        (WorkSetTable.Facet, activity.Facet),
                        (WorkSetTable.Order, (order + 1).ToString(CultureInfo.InvariantCulture)),
                        (WorkSetTable.Share, activity.Share),
                        (WorkSetTable.Duration, activity.Duration),
                        (WorkSetTable.Technique, activity.Technique),
                        (WorkSetTable.After, activity.After),
                        (WorkSetTable.Hazards, activity.Hazards)
                    );
                }
            }
        }

        private static IEnumerable<string> TypesOf(ReadList list) =>
            list.Rows.Select(row => TypeOf(list, row)).OfType<string>();

        private static string? TypeOf(ReadList list, ListRow row)
        {
            var column = list.Columns.ToList().IndexOf(ElementTable.PartType);
            return column < 0 ? null : row.Cells[column];
        }

        private static void AddPackages(EditDraft draft, ReadList list, IReadOnlyList<int> ids)
        {
            for (var row = 0; row < ids.Count; row++)
            {
                if (TypeOf(list, list.Rows[row]) is not { } type)
                {
                    continue;
                }

                draft.Set(ElementTable.Split, ids[row], "phase");
                foreach (var activity in WorkSetTexts.Types[type].Set)
                {
                    var name = $"{list.Rows[row].Name}, {activity.Name.ToLowerInvariant()}";
                    var id = draft.Breakdown.Add(ids[row], int.MaxValue, name);
                    draft.Set(ElementTable.Activity, id, activity.Name);
                    draft.Set(ElementTable.Output, id, activity.Output);
                    draft.Set(ElementTable.Acceptance, id, activity.Acceptance);
                    draft.Set(ElementTable.Hazards, id, activity.Hazards);
                    draft.Add(
                        PackageTable.Definition,
                        (PackageTable.Package, draft.CodeOf(ElementTable.Definition, id)),
                        (PackageTable.Technique, activity.Technique)
                    );
                }
            }
        }
    }
}
