using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using Plenum.Core;
using Plenum.Core.Breakdown;
using Plenum.Core.Foundation;
using Plenum.Core.Foundation.Tables;
using Plenum.Workbench.Commands.Breakdown;
using Plenum.Workbench.Workbooks;

namespace Plenum.Workbench.Commands;

/// <summary>
/// Reads commands that were written down as JSON objects: <c>command</c> names the command, the other fields are its
/// own, all in snake_case. Where a command wants the id of a row, its code will do. Commands that take over a file are
/// not among them.
/// </summary>
public sealed class CommandReader(Project project)
{
    private const string AField = "an object with a field for each column";

    private static readonly FrozenDictionary<string, Type> Known = typeof(EditCommand)
        .Assembly.GetExportedTypes()
        .Where(type =>
            type.IsSubclassOf(typeof(EditCommand))
            && !type.IsAbstract
            && type != typeof(EditWorkbookCommand)
            && type != typeof(UseStandardCommand)
        )
        .ToFrozenDictionary(NameOf, StringComparer.Ordinal);

    /// <summary>The names of all commands.</summary>
    public static IEnumerable<string> Names => Known.Keys.Order(StringComparer.Ordinal);

    /// <summary>The fields of a command, in order.</summary>
    public static IEnumerable<string> FieldsOf(string command) =>
        Fields(Known[command]).Select(field => Snake(field.Name!));

    /// <exception cref="EditException">It is no command, or a field is missing or not understood.</exception>
    public EditCommand Read(string json)
    {
        using var document = JsonText.Parse(json);
        return Command(document.RootElement);
    }

    private EditCommand Command(JsonElement json)
    {
        if (
            json.ValueKind != JsonValueKind.Object
            || !json.TryGetProperty("command", out var named)
            || named.ValueKind != JsonValueKind.String
        )
        {
            throw new EditException("No command is named.", "an object with the field command");
        }

        var name = named.GetString()!;
        if (!Known.TryGetValue(name, out var type))
        {
            var nearest = NearestWord.Of(name, Known.Keys);
            throw new EditException(
                $"No command is called \"{InputErrors.Shorten(name)}\""
                    + (nearest is null ? "." : $"; did you mean {nearest}?"),
                nearest ?? "one of " + string.Join(", ", Names)
            );
        }

        return (EditCommand)Make(type, json, name);
    }

    private object Make(Type type, JsonElement json, string what)
    {
        var fields = Fields(type);
        foreach (var given in json.EnumerateObject())
        {
            if (given.Name != "command" && !fields.Any(field => Snake(field.Name!) == given.Name))
            {
                throw new EditException(
                    $"{what} has no field {InputErrors.Shorten(given.Name)}.",
                    FieldsIn(type)
                );
            }
        }

        var table =
            type == typeof(CellText)
            && json.TryGetProperty("table", out var of)
            && of.ValueKind == JsonValueKind.String
                ? Cells.TableOf(of.GetString()!)
            : type == typeof(RemoveRowCommand)
            && json.TryGetProperty("table", out of)
            && of.ValueKind == JsonValueKind.String
                ? Cells.TableOf(of.GetString()!)
            : ElementTable.Definition;
        object?[] values =
        [
            .. fields.Select(field =>
                json.TryGetProperty(Snake(field.Name!), out var given) && !IsLacking(field, given)
                    ? Value(
                        field.ParameterType,
                        given,
                        field.GetCustomAttribute<RowOfAttribute>() is { } row
                            ? Cells.TableOf(row.Table)
                            : table,
                        $"{what}, {Snake(field.Name!)}"
                    )
                : field.HasDefaultValue ? field.DefaultValue
                : MayBeNull(field) ? null
                : throw new EditException(
                    $"{what} needs the field {Snake(field.Name!)}.",
                    Expected(field.ParameterType)
                )
            ),
        ];
        return Activator.CreateInstance(type, values)!;
    }

    private object? Value(Type type, JsonElement json, TableDefinition table, string what)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        if (json.ValueKind == JsonValueKind.Null)
        {
            return null;
        }

        if (plain == typeof(int) && json.ValueKind == JsonValueKind.String)
        {
            return IdOf(table, json.GetString()!, what);
        }

        if (plain.IsEnum && json.ValueKind == JsonValueKind.String)
        {
            foreach (var value in Enum.GetValues(plain))
            {
                if (Snake(value.ToString()!) == json.GetString())
                {
                    return value;
                }
            }
        }
        else if (plain == typeof(string) && json.ValueKind == JsonValueKind.String)
        {
            return json.GetString();
        }
        else if (plain == typeof(string) && json.ValueKind == JsonValueKind.Number)
        {
            return json.GetRawText();
        }
        else if (plain == typeof(int) && json.TryGetPlace(out var number))
        {
            return number;
        }
        else if (
            plain == typeof(decimal)
            && json.ValueKind == JsonValueKind.Number
            && json.TryGetDecimal(out var amount)
        )
        {
            return amount;
        }
        else if (
            plain == typeof(bool)
            && json.ValueKind is JsonValueKind.True or JsonValueKind.False
        )
        {
            return json.GetBoolean();
        }
        else if (
            plain == typeof(DateOnly)
            && json.ValueKind == JsonValueKind.String
            && DateOnly.TryParseExact(
                json.GetString(),
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var day
            )
        )
        {
            return day;
        }
        else if (plain == typeof(EditCommand))
        {
            return Command(json);
        }
        else if (ItemOf(plain) is { } item)
        {
            return List(item, json, table, what);
        }
        else if (json.ValueKind == JsonValueKind.Object && HasFields(plain))
        {
            return Make(plain, json, what);
        }

        throw new EditException(
            $"{what}: {InputErrors.Shorten(json.GetRawText())} found, {Expected(plain)} expected.",
            Expected(plain)
        );
    }

    private object List(Type item, JsonElement json, TableDefinition table, string what)
    {
        if (item == typeof(KeyValuePair<string, string?>) && json.ValueKind == JsonValueKind.Object)
        {
            return json.EnumerateObject()
                .Select(field => new KeyValuePair<string, string?>(
                    field.Name,
                    (string?)Value(typeof(string), field.Value, table, what)
                ))
                .ToArray();
        }

        if (
            json.ValueKind != JsonValueKind.Array
            || item == typeof(KeyValuePair<string, string?>)
            || json.EnumerateArray().Any(given => given.ValueKind == JsonValueKind.Null)
        )
        {
            var expected =
                item == typeof(KeyValuePair<string, string?>) ? AField
                : json.ValueKind == JsonValueKind.Array ? "a list without empty places"
                : "a list";
            throw new EditException(
                $"{what}: {InputErrors.Shorten(json.GetRawText())} found, {expected} expected.",
                expected
            );
        }

        var list = Array.CreateInstance(item, json.GetArrayLength());
        var at = 0;
        foreach (var given in json.EnumerateArray())
        {
            list.SetValue(Value(item, given, table, what), at++);
        }

        return list;
    }

    private int IdOf(TableDefinition definition, string code, string what)
    {
        var table = project[definition];
        var row = definition.Keys is [{ Storage: ColumnStorage.Text }] ? table.RowOfCode(code) : -1;
        return row >= 0
            ? table.Ids[row]
            : throw new EditException(
                $"{what}: {definition.Name} has no row \"{InputErrors.Shorten(code)}\".",
                $"the code, or the id, of a row of {definition.Name}"
            );
    }

    private static Type? ItemOf(Type type) =>
        type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)
            ? type.GetGenericArguments()[0]
            : null;

    private static ParameterInfo[] Fields(Type type) =>
        type.GetConstructors()
            .OrderByDescending(made => made.GetParameters().Length)
            .First()
            .GetParameters();

    private static bool MayBeNull(ParameterInfo field) =>
        Nullable.GetUnderlyingType(field.ParameterType) is not null
        || new NullabilityInfoContext().Create(field).WriteState == NullabilityState.Nullable;

    /// <summary>Null where only a value makes sense; for an id it means none.</summary>
    private static bool IsLacking(ParameterInfo field, JsonElement given) =>
        given.ValueKind == JsonValueKind.Null
        && field.ParameterType != typeof(int)
        && !MayBeNull(field);

    /// <summary>A record of the program, whose fields are written as an object.</summary>
    private static bool HasFields(Type type) =>
        type is { IsClass: true, IsAbstract: false }
        && type != typeof(string)
        && (
            type.Assembly == typeof(CommandReader).Assembly
            || type.Assembly == typeof(Project).Assembly
        );

    private static string FieldsIn(Type type) =>
        "the fields " + string.Join(", ", Fields(type).Select(field => Snake(field.Name!)));

    private static string Expected(Type type) =>
        type == typeof(int) ? "an id or a code"
        : type == typeof(decimal) ? "a number"
        : type == typeof(EditCommand) ? "an object with the field command"
        : ItemOf(type) == typeof(KeyValuePair<string, string?>) ? AField
        : ItemOf(type) is not null ? "a list"
        : HasFields(type) ? "an object with " + FieldsIn(type)
        : type == typeof(bool) ? "true or false"
        : type.IsEnum ? "one of " + string.Join(", ", Enum.GetNames(type).Select(Snake))
        : type == typeof(string) ? "text"
        : type == typeof(DateOnly) ? "a date such as 2026-03-31"
        : "a value";

    private static string NameOf(Type type) =>
        Snake(
            type.Name.EndsWith("Command", StringComparison.Ordinal) ? type.Name[..^7] : type.Name
        );

    private static string Snake(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('_');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}

internal static class JsonNumbers
{
    /// <summary>Ids and places are whole and not negative.</summary>
    public static bool TryGetPlace(this JsonElement json, out int number)
    {
        number = 0;
        return json.ValueKind == JsonValueKind.Number
            && json.TryGetInt32(out number)
            && number >= 0;
    }
}
