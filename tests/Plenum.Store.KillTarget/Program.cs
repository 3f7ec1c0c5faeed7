using System.Globalization;
using Plenum.Store;
using Plenum.Store.KillTarget;

// A program that is there to be killed. "commit FILE PAGES": commits numbered revisions without end, with so many
// pages of cache, and says each one once it is acknowledged. "create FOLDER": makes one new project after another.
// "hold FILE": begins to write, says so, and waits until its input ends.
var entry = new AuditEntry("kill target", args[0], null, null);
switch (args[0])
{
    case "commit":
        CommitWithoutEnd(args[1], int.Parse(args[2], CultureInfo.InvariantCulture));
        break;
    case "create":
        CreateWithoutEnd(args[1]);
        break;
    default:
        Hold(args[1]);
        break;
}

void CommitWithoutEnd(string path, int pages)
{
    using var file = ProjectFile.Open(path);
    file.Connection.Execute(
        string.Create(CultureInfo.InvariantCulture, $"PRAGMA cache_size = {pages}")
    );
    var before = file.Load();
    while (true)
    {
        var after = NumberedRevisions.At(before.Revision + 1);
        file.Commit(before, after, NumberedRevisions.Between(before, after), entry);
        Say(after.Revision);
        if (after.Revision % 3 == 0)
        {
            file.SaveColumnCache();
        }

        before = after;
    }
}

void CreateWithoutEnd(string folder)
{
    for (var number = 0L; ; number++)
    {
        var name = number.ToString(CultureInfo.InvariantCulture) + FormatFacts.Extension;
        ProjectFile.Create(Path.Combine(folder, name), entry, TimeProvider.System).Dispose();
        Say(number);
    }
}

void Hold(string path)
{
    using var file = ProjectFile.Open(path);
    file.Connection.Execute("BEGIN IMMEDIATE");
    Say(0);
    Console.In.ReadToEnd();
}

static void Say(long number)
{
    Console.Out.WriteLine(number.ToString(CultureInfo.InvariantCulture));
    Console.Out.Flush();
}
