using System.Globalization;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;

namespace Plenum.Store.Tests.Support;

/// <summary>
/// Projects with rows in all tables and cells of every kind, given or not, drawn from a seed. Constructed here: keys
/// are unique and references lead somewhere; the figures mean nothing.
/// </summary>
internal sealed class GeneratedProject(int seed, int rows)
{
    private static readonly string[] Texts =
    [
        "",
        "Foundation of pump 4",
        "Förderleitung, Ø 300",
        "泵基础",
        "line one\nline two",
        "\"quoted\"; with 'marks'",
        "a",
        " spaces kept ",
        "🏗 site",
        new string('x', 3_000),
    ];

    private readonly Random random = new(seed);
    private readonly Dictionary<TableDefinition, int> counts = [];

    public static Project Of(int seed, int rows = 40) => new GeneratedProject(seed, rows).Build();

    /// <summary>The change that adds every row of a project to an empty one.</summary>
    public static IReadOnlyList<TableChange> AllAdded(Project project) =>
        [
            .. project
                .Tables.Where(table => table.Count > 0)
                .Select(table => new TableChange(table.Definition, [.. table.Ids.Order()], [], [])),
        ];

    private Project Build()
    {
        foreach (var definition in ProjectLayout.Tables)
        {
            counts[definition] = definition == ProjectTable.Definition ? 3 : rows;
        }

        return new Project(ProjectLayout.Tables.Select(TableOf), 1);
    }

    private Table TableOf(TableDefinition definition)
    {
        var builders = definition.Columns.Select(column => column.NewBuilder()).ToArray();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var row = 0; row < counts[definition]; row++)
        {
            string key;
            object?[] cells;
            do
            {
                cells = [.. definition.Columns.Select(column => CellOf(column, row))];
                key = string.Join(
                    '|',
                    definition.Keys.Select(column =>
                        Convert.ToString(cells[column.Index], CultureInfo.InvariantCulture)
                    )
                );
            } while (!seen.Add(key));

            for (var index = 0; index < cells.Length; index++)
            {
                Add(builders[index], cells[index]);
            }
        }

        var table = new Table(
            definition,
            [.. Enumerable.Range(1, counts[definition])],
            [.. builders.Select(builder => builder.Build())],
            OwnFieldsOf(definition)
        );
        return definition == ElementTable.Definition ? InTreeOrder(table) : table;
    }

    private object? CellOf(ColumnDefinition column, int row)
    {
        if (column.Table == ProjectTable.Definition)
        {
            string[][] settings =
            [
                ["currency", "KWD"],
                ["name", "Tank farm"],
                ["code", "TF"],
            ];
            return settings[row][column.Index];
        }

        if (column == ElementTable.Parent)
        {
            return row == 0 ? null : random.Next(row) + 1;
        }

        var mustBeGiven = column.IsRequired || column.IsKey && random.Next(2) == 0;
        if (!mustBeGiven && random.Next(3) == 0)
        {
            return null;
        }

        var withdrawn = column.IsWithdrawable && random.Next(3) == 0;
        return column.Kind switch
        {
            CellKind.Text => Texts[random.Next(Texts.Length)] + (random.Next(2) == 0 ? "" : row),
            CellKind.Code => string.Create(
                CultureInfo.InvariantCulture,
                $"{column.Name[0]}.{row % 7}.{row}"
            ),
            CellKind.Whole or CellKind.Percent or CellKind.Flag => withdrawn
                ? Cell.WithdrawnInt
                : (int)random.NextInt64(column.Least, column.Greatest + 1),
            CellKind.Date => withdrawn
                ? Cell.WithdrawnInt
                : random.Next(0, DateOnly.MaxValue.DayNumber + 1),
            CellKind.Money or CellKind.Hours => withdrawn
                ? Cell.WithdrawnLong
                : random.NextInt64(
                    Math.Max(column.Least, -Layout.GreatestMoney),
                    Math.Min(column.Greatest, Layout.GreatestMoney) + 1
                ),
            CellKind.Decimal => withdrawn ? Cell.WithdrawnDecimal : DecimalOf(),
            CellKind.Word => WordOf(column.Codec!),
            _ => ReferenceOf(column),
        };
    }

    private decimal DecimalOf() =>
        random.Next(3) switch
        {
            0 => 0m,
            1 => new decimal(random.Next(), random.Next(), random.Next(), false, 28),
            _ => random.Next(1_000_000) / 1_000m,
        };

    private int WordOf(Codec codec) =>
        codec switch
        {
            WordCodec words => random.Next(words.Words.Count),
            CurrencyCodec => Currency.Parse(random.Next(2) == 0 ? "JPY" : "USD").Number,
            TechniqueCodec => random.Next(TechniqueCodec.Apportioned + 1),
            _ => random.Next(128),
        };

    private int ReferenceOf(ColumnDefinition column)
    {
        if (column.Codec is WordCodec words && random.Next(2) == 0)
        {
            return ColumnDefinition.EncodeWord(random.Next(words.Words.Count));
        }

        var target = random.Next(column.Targets.Count);
        var count = counts[ProjectLayout.Target(column, target)];
        return column.EncodeReference(target, random.Next(count) + 1);
    }

    private Dictionary<string, TextColumn> OwnFieldsOf(TableDefinition definition)
    {
        var fields = new Dictionary<string, TextColumn>(StringComparer.Ordinal);
        foreach (var heading in random.Next(2) == 0 ? new[] { "x_zone", "x_Größe \"m\"" } : [])
        {
            var cells = new string?[counts[definition]];
            for (var row = 1; row < cells.Length; row += 2)
            {
                cells[row] = Texts[random.Next(Texts.Length)];
            }

            if (cells.Length > 1)
            {
                fields.Add(heading, new TextColumn(cells));
            }
        }

        return fields;
    }

    private static void Add(ColumnBuilder builder, object? cell)
    {
        switch (cell)
        {
            case null:
                builder.AddMissing();
                break;
            case string text:
                ((TextColumnBuilder)builder).Add(text);
                break;
            case int whole:
                ((NumberColumnBuilder<int>)builder).Add(whole);
                break;
            case long whole:
                ((NumberColumnBuilder<long>)builder).Add(whole);
                break;
            default:
                ((NumberColumnBuilder<decimal>)builder).Add((decimal)cell);
                break;
        }
    }

    private static Table InTreeOrder(Table elements)
    {
        var parents = elements.Ints(ElementTable.Parent).ToArray();
        return elements.InOrder(
            DepthFirstOrder.Of(
                Array.ConvertAll(parents, id => id == Cell.NoInt ? -1 : elements.RowOf(id)),
                elements.Ints(ElementTable.Order),
                elements.Codes
            )
        );
    }
}
