using System.Globalization;
using Plenum.Core;
using Plenum.Store.Sqlite;

namespace Plenum.Store;

/// <summary>Reads and writes what the file says about itself, in its table <c>plenum</c>.</summary>
internal static class FileFacts
{
    private const string Project = "project_uid";
    private const string Revision = "revision";
    private const string Token = "revision_token";

    /// <summary>The state of the file. The caller is inside a transaction that has not yet written.</summary>
    public static Stamp Read(Database database)
    {
        var facts = new Dictionary<string, string>(StringComparer.Ordinal);
        using (var statement = database.Prepare("SELECT \"key\", value FROM plenum"))
        {
            while (statement.Step())
            {
                facts[statement.String(0)!] = statement.String(1)!;
            }
        }

        if (
            Guid.TryParse(facts.GetValueOrDefault(Project), out var project)
            && Guid.TryParse(facts.GetValueOrDefault(Token), out var token)
            && long.TryParse(
                facts.GetValueOrDefault(Revision),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var revision
            )
        )
        {
            return new Stamp(
                project,
                revision,
                token,
                FileHeader.ChangeCounter(database),
                LengthOf(database)
            );
        }

        throw new StoreException(
            StoreProblem.Damaged,
            $"{database.Path} does not say which project and revision it holds: its table plenum lacks "
                + $"{Project}, {Revision} or {Token}. Go back to a copy of the file."
        );
    }

    public static void Write(
        Database database,
        Guid project,
        long revision,
        Guid token,
        ProjectSettings settings
    )
    {
        using var statement = database.Prepare(
            "INSERT INTO plenum VALUES (?1, ?2) ON CONFLICT (\"key\") DO UPDATE SET value = excluded.value"
        );
        Put(Project, project.ToString());
        Put(Revision, revision.ToString(CultureInfo.InvariantCulture));
        Put(Token, token.ToString());
        Put("currency", settings.Currency.Code);
        Put("currency_digits", settings.Currency.Digits.ToString(CultureInfo.InvariantCulture));
        Put(
            "currency_minor_units",
            Math.Pow(10, settings.Currency.Digits).ToString("F0", CultureInfo.InvariantCulture)
        );

        void Put(string key, string value)
        {
            statement.Bind(1, key);
            statement.Bind(2, value);
            statement.Run();
        }
    }

    public static long LengthOf(Database database) =>
        database.Number("PRAGMA page_count") * database.Number("PRAGMA page_size");
}
