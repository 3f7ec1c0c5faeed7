namespace Plenum.Cli.Tests.Support;

/// <summary>The pump house with more of what its breakdown can hold; invented.</summary>
internal static class Breakdowns
{
    private static readonly string[] Parts =
    [
        "part_types.csv",
        "part_type,name\npump,Pump\n",
        "work_sets.csv",
        "part_type,activity,facet,order\npump,Design,engineering,1\npump,Buy,procurement,2\npump,Erect,construction,3\npump,Paint,construction,4\n",
        "elements.csv",
        "code,parent,name,part_type,activity\nPH.30,PH,Machinery,pump,\nPH.30.1,PH.30,Pumps,,Buy\nPH.30.2,PH.30,Erection,,Erect\n",
        "not_needed.csv",
        "element,activity,reason\nPH.30,Paint,comes painted\n",
    ];

    private static readonly string[] Statement =
    [
        "scope_revisions.csv",
        "revision,signed,note\n1,2025-12-15,Contract\n2,,Second pump\n",
        "scope.csv",
        "item,parent,kind,text,revision\n1,,deliverable,A pump house with two pumps,2\n1.1,1,requirement,Pumps are tested at the maker's works,1\n1.2,1,requirement,Walls withstand a flood,1\n2,,exclusion,The pressure main,1\n3,,requirement,Spare parts for two years,1\n",
        "scope_wordings.csv",
        "item,revision,kind,text,since\n1,2,deliverable,A pump house with a pump,1\n",
        "scope_phrases.csv",
        "item,phrase\n3,for two years\n",
        "trace.csv",
        "item,element,phrase\n1.1,PH.30.1,\n1.2,PH.20.2,\n1,PH.20,pump house\n1,PH.30,two pumps\n2,PH.50,\n",
        "queries.csv",
        "query,item,text,asked,asked_by,answer,answered\nQ1,3,Which parts are meant?,2026-03-02,ann,,\n",
    ];

    /// <summary>Machinery is a part that needs four activities: two are planned, one is ruled out, one is missing.</summary>
    public static Terminal WithParts() => With(Parts);

    /// <summary>There is a scope statement with a draft revision, traces and an open query.</summary>
    public static Terminal WithStatement() => With(Statement);

    private static Terminal With(string[] files)
    {
        var terminal = PumpHouse.Open();
        Directory.CreateDirectory(terminal["more"]);
        for (var file = 0; file < files.Length; file += 2)
        {
            File.WriteAllText(Path.Combine(terminal["more"], files[file]), files[file + 1]);
        }

        terminal.Do("import", PumpHouse.File, "more");
        return terminal;
    }
}
