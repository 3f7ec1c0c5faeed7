using System.Text.Json;
using Plenum.Cli.Tests.Support;

namespace Plenum.Cli.Tests.Answers;

/// <summary>Every answer with --json is one object with the names that docs/files.md promises.</summary>
public class JsonTests
{
    private static readonly string[] ActivityNames =
    [
        "activity",
        "package",
        "name",
        "duration",
        "remaining",
        "milestone",
        "started",
        "finished",
        "early_start",
        "early_finish",
        "late_start",
        "late_finish",
        "resumes",
        "total_float",
        "free_float",
        "interfering_float",
        "independent_float",
        "critical",
        "driving",
        "chain",
        "required_by",
        "required_float",
        "negative_float_cause",
    ];

    private static readonly string[] Measures =
    [
        "bac",
        "pv",
        "ev",
        "ac",
        "committed",
        "sv",
        "cv",
        "spi",
        "cpi",
        "percent_complete",
        "percent_spent",
        "etc",
        "eac",
        "vac",
        "eac_plan",
        "eac_cpi",
        "eac_cpi_spi",
        "eac_cpi3",
        "tcpi_bac",
        "tcpi_eac",
        "es",
        "at_periods",
        "spi_t",
        "forecast_finish",
        "cv_favourable",
        "cv_unfavourable",
        "cv_masking",
        "sv_favourable",
        "sv_unfavourable",
        "sv_masking",
    ];

    private static readonly string[] Texts = ["code", "name", "forecast_finish"];

    [Theory]
    [InlineData("account", 4)]
    [InlineData("element", 13)]
    [InlineData("unit", 3)]
    [InlineData("cost_element", 4)]
    [InlineData("package", 9)]
    [InlineData("area", 2)]
    public void Accounts_answer_with_the_whole_first_and_all_measures_in_every_row(
        string by,
        int least
    )
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("accounts", PumpHouse.File, "--by", by, "--json"));
        Assert.Equal("2026-03-31", answer.GetProperty("at").GetString());
        Assert.Equal(by, answer.GetProperty("by").GetString());
        Assert.Equal(1, answer.GetProperty("revision").GetInt64());
        var rows = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal("*total", rows[0].GetProperty("code").GetString());
        Assert.True(rows.Count > least, $"{rows.Count} rows");
        foreach (var row in rows)
        {
            Assert.Equal(["code", "name", .. Measures], Json.NamesOf(row));
            foreach (var member in row.EnumerateObject())
            {
                JsonValueKind[] kinds = Texts.Contains(member.Name)
                    ? [JsonValueKind.String, JsonValueKind.Null]
                    : [JsonValueKind.Number, JsonValueKind.Null];
                Assert.Contains(member.Value.ValueKind, kinds);
            }
        }
    }

    [Fact]
    public void An_index_without_actual_cost_is_null_and_not_a_number()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(
            terminal.Do("accounts", PumpHouse.File, "--under", "PH.30.2", "--json")
        );
        Assert.Equal(
            JsonValueKind.Null,
            answer.GetProperty("rows")[0].GetProperty("cpi").ValueKind
        );
    }

    [Fact]
    public void The_tree_answers_depth_first_with_its_names()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("tree", PumpHouse.File, "--json"));
        Assert.Equal(["level", "under", "revision", "rows"], Json.NamesOf(answer));
        var rows = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.All(
            rows,
            row =>
                Assert.Equal(
                    [
                        "code",
                        "name",
                        "level",
                        "kind",
                        "split",
                        "budget",
                        "allotted",
                        "gap",
                        "hours",
                        "packages",
                    ],
                    Json.NamesOf(row)
                )
        );
        Assert.Equal(
            ["PH", "PH.10", "PH.10.1", "PH.10.2", "PH.20"],
            rows.Take(5).Select(row => row.GetProperty("code").GetString())
        );
        Assert.Equal(385_000m, rows[0].GetProperty("budget").GetDecimal());
        Assert.Equal(9, rows[0].GetProperty("packages").GetInt32());
        Assert.Equal(JsonValueKind.Null, rows[2].GetProperty("allotted").ValueKind);
    }

    [Fact]
    public void The_tree_down_to_a_level_and_under_an_element_says_what_was_asked()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(
            terminal.Do("tree", PumpHouse.File, "--level", "2", "--under", "PH.30", "--json")
        );
        Assert.Equal(2, answer.GetProperty("level").GetInt32());
        Assert.Equal("PH.30", answer.GetProperty("under").GetString());
        var row = Assert.Single(answer.GetProperty("rows").EnumerateArray().ToList());
        Assert.Equal("PH.30", row.GetProperty("code").GetString());
    }

    [Fact]
    public void The_audit_answers_with_findings_and_their_counts()
    {
        using var terminal = PumpHouse.Open();
        var reply = terminal.Run("check", PumpHouse.File, "--json");
        var answer = Json.Of(reply);
        var findings = answer.GetProperty("findings").EnumerateArray().ToList();
        Assert.NotEmpty(findings);
        foreach (var finding in findings)
        {
            Assert.Equal(
                ["rule", "severity", "code", "message", "remedy", "accepted"],
                Json.NamesOf(finding)
            );
        }

        var counts = answer.GetProperty("counts");
        Assert.Equal(["error", "note", "warning"], Json.NamesOf(counts).Order());
        foreach (var count in counts.EnumerateObject())
        {
            Assert.Equal(
                findings.Count(finding =>
                    finding.GetProperty("severity").GetString() == count.Name
                ),
                count.Value.GetInt32()
            );
        }

        Assert.Equal(
            counts.GetProperty("error").GetInt32() > 0 ? ExitCode.AnswerIsNo : ExitCode.Done,
            reply.Status
        );
    }

    [Fact]
    public void Precision_answers_for_every_account_at_every_periods_end()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("precision", PumpHouse.File, "--json"));
        Assert.Equal(
            ["at", "account", "revision", "currency", "present", "rows"],
            Json.NamesOf(answer)
        );
        var rows = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal(0, rows.Count % 6);
        Assert.All(
            rows,
            row =>
                Assert.Equal(
                    [
                        "account",
                        "name",
                        "period",
                        "end",
                        "budget",
                        "loe_share",
                        "open",
                        "bias",
                        "spread",
                        "worst",
                        "precision",
                        "threshold",
                        "verdict",
                        "packages_to_split",
                        "packages_to_merge",
                    ],
                    Json.NamesOf(row)
                )
        );
        Assert.All(
            rows,
            row =>
                Assert.Equal(
                    row.GetProperty("verdict").GetString() == "too_coarse",
                    row.GetProperty("packages_to_split").GetArrayLength() > 0
                )
        );
        var april = Json.Of(
            terminal.Do(
                "precision",
                PumpHouse.File,
                "--json",
                "--account",
                "CA30",
                "--at",
                "2026-05-03"
            )
        );
        var only = Assert.Single(april.GetProperty("rows").EnumerateArray().ToList());
        Assert.Equal("2026-04-30", only.GetProperty("end").GetString());
    }

    [Fact]
    public void Certainty_answers_for_the_rows_of_a_cut_the_total_first()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("certainty", PumpHouse.File, "--by", "unit", "--json"));
        Assert.Equal(
            ["at", "by", "level", "under", "revision", "currency", "rows"],
            Json.NamesOf(answer)
        );
        var rows = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal("*total", rows[0].GetProperty("code").GetString());
        Assert.All(
            rows,
            row =>
            {
                Assert.Equal(
                    [
                        "code",
                        "name",
                        "bac",
                        "ev",
                        "open",
                        "bias",
                        "spread",
                        "worst",
                        "precision",
                        "cv",
                        "cv_low",
                        "cv_high",
                        "cv_told",
                        "cv_to_explain",
                        "sv",
                        "sv_low",
                        "sv_high",
                        "sv_told",
                        "sv_to_explain",
                        "measure_finer",
                        "buys",
                    ],
                    Json.NamesOf(row)
                );
                Assert.True(
                    row.GetProperty("cv_low").GetDecimal()
                        <= row.GetProperty("cv_high").GetDecimal()
                );
            }
        );
    }

    [Fact]
    public void The_forecast_answers_with_every_method_and_the_history_of_each()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("forecast", PumpHouse.File, "--json"));
        Assert.Equal("2026-03-31", answer.GetProperty("at").GetString());
        var methods = answer.GetProperty("methods").EnumerateArray().ToList();
        Assert.Equal(5, methods.Count);
        Assert.All(
            methods,
            method => Assert.Equal(["method", "name", "eac", "vac"], Json.NamesOf(method))
        );
        var history = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.Equal(3, history.Count);
        Assert.All(
            history,
            point => Assert.Equal(["period", "end", .. Measures], Json.NamesOf(point))
        );
    }

    [Fact]
    public void The_network_answers_with_every_activity_and_the_chain_that_drives_the_end()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("network", PumpHouse.File, "--json"));
        Assert.Equal(
            [
                "at",
                "to",
                "float",
                "revision",
                "progress",
                "finish",
                "critical_float",
                "critical_count",
                "activities",
                "chain",
                "broken_links",
                "out_of_sequence",
            ],
            Json.NamesOf(answer)
        );
        var rows = answer.GetProperty("activities").EnumerateArray().ToList();
        // two activities of one package, and eight packages that are their own activity
        Assert.Equal(10, rows.Count);
        Assert.All(rows, row => Assert.Equal(ActivityNames, Json.NamesOf(row)));
        Assert.Equal(
            answer.GetProperty("critical_count").GetInt32(),
            rows.Count(row => row.GetProperty("critical").GetBoolean())
        );
        var finish = answer.GetProperty("finish").GetString();
        Assert.Equal(finish, rows.Max(row => row.GetProperty("early_finish").GetString()));
        var chain = answer.GetProperty("chain").EnumerateArray().ToList();
        Assert.Equal(finish, chain[^1].GetProperty("early_finish").GetString());
        Assert.Equal(JsonValueKind.Null, chain[^1].GetProperty("type").ValueKind);
        Assert.Equal(
            finish,
            Json.Of(terminal.Do("forecast", PumpHouse.File, "--json"))
                .GetProperty("network_finish")
                .GetString()
        );
    }

    [Fact]
    public void Moved_dates_answer_with_every_change_and_the_parts_of_every_move()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(
            terminal.Do("network", PumpHouse.File, "--since", "2026-02-28", "--json")
        );
        Assert.Equal(
            [
                "revision",
                "revision_before",
                "at",
                "at_before",
                "finish",
                "finish_before",
                "changes",
                "moved",
            ],
            Json.NamesOf(answer)
        );
        Assert.All(
            answer.GetProperty("moved").EnumerateArray(),
            row =>
                Assert.Equal(
                    row.GetProperty("work_days").GetInt32(),
                    row.GetProperty("because")
                        .EnumerateArray()
                        .Sum(cause => cause.GetProperty("work_days").GetInt32())
                )
        );
    }

    [Fact]
    public void Near_critical_activities_are_those_that_were_asked_for()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("network", PumpHouse.File, "--float", "10", "--json"));
        var limit = answer.GetProperty("critical_float").GetInt32() + 10;
        Assert.All(
            answer.GetProperty("activities").EnumerateArray(),
            row => Assert.InRange(row.GetProperty("total_float").GetInt32(), int.MinValue, limit)
        );
    }

    [Fact]
    public void The_assessment_answers_with_fourteen_metrics_and_the_activities_of_each()
    {
        using var terminal = PumpHouse.Open();
        var answer = Json.Of(terminal.Do("assess", PumpHouse.File, "--json"));
        Assert.Equal(["at", "revision", "metrics", "practices"], Json.NamesOf(answer));
        var metrics = answer.GetProperty("metrics").EnumerateArray().ToList();
        Assert.Equal(
            Enumerable.Range(1, 14),
            metrics.Select(metric => metric.GetProperty("number").GetInt32())
        );
        Assert.All(
            metrics,
            metric =>
                Assert.Equal(
                    [
                        "number",
                        "name",
                        "count",
                        "of",
                        "value",
                        "threshold",
                        "pass",
                        "activities",
                        "links",
                    ],
                    Json.NamesOf(metric)
                )
        );
        Assert.All(
            answer.GetProperty("practices").EnumerateArray(),
            measure => Assert.Equal(["practice", "name", "value", "of"], Json.NamesOf(measure))
        );
    }

    [Fact]
    public void New_and_import_and_export_and_demo_answer_with_one_object_each()
    {
        using var terminal = new Terminal();
        var made = Json.Of(terminal.Do("new", PumpHouse.File, "--json"));
        Assert.Equal(0, made.GetProperty("revision").GetInt64());
        var taken = Json.Of(terminal.Do("import", PumpHouse.File, PumpHouse.Tables, "--json"));
        Assert.Equal(["changed", "revision"], Json.NamesOf(taken));
        Assert.Equal(13, taken.GetProperty("changed").GetProperty("elements").GetInt32());
        Assert.Equal(1, taken.GetProperty("revision").GetInt64());
        var again = Json.Of(terminal.Do("import", PumpHouse.File, PumpHouse.Tables, "--json"));
        Assert.Empty(Json.NamesOf(again.GetProperty("changed")));
        Assert.Equal(1, again.GetProperty("revision").GetInt64());
        var written = Json.Of(terminal.Do("export", PumpHouse.File, "tables", "--json"));
        Assert.Equal("<folder>/tables", written.GetProperty("folder").GetString());
        var demo = Json.Of(terminal.Do("demo", "plant", "--packages", "1", "--json"));
        Assert.Equal("<folder>/plant", demo.GetProperty("folder").GetString());
    }
}
