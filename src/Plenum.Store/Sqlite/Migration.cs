using System.Globalization;
using System.Reflection;

namespace Plenum.Store.Sqlite;

/// <summary>One step of the file's layout: its number, from 1, and the SQL that makes it from the step before.</summary>
internal sealed record Migration(int Number, string Sql)
{
    /// <summary>All steps that this version knows, in order and without gaps.</summary>
    public static IReadOnlyList<Migration> All { get; } = ReadAll();

    /// <summary>
    /// Brings the file up to the last step. Each step is one transaction: done whole or not at all, so that a file
    /// stands between two steps at worst and the next opening goes on from there.
    /// </summary>
    public static void Apply(Database database, IReadOnlyList<Migration> steps)
    {
        foreach (var step in steps)
        {
            database.Execute("BEGIN IMMEDIATE");
            try
            {
                // Asked again inside the transaction: another program may have been faster.
                if (database.Number("PRAGMA user_version") < step.Number)
                {
                    database.Execute(step.Sql);
                    database.Execute(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"PRAGMA user_version = {step.Number}"
                        )
                    );
                }

                database.Execute("COMMIT");
            }
            catch
            {
                database.Rollback();
                throw;
            }
        }
    }

    private static List<Migration> ReadAll()
    {
        var assembly = Assembly.GetExecutingAssembly();
        List<Migration> all = [];
        foreach (
            var name in assembly
                .GetManifestResourceNames()
                .Where(name => name.EndsWith(".sql", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
        )
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            all.Add(new Migration(all.Count + 1, reader.ReadToEnd()));
        }

        return all;
    }
}
