using System.Text.Json;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;

namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>fleettrend import against the real API. Counts follow from the files of protos/examples/csv.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ImportTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private readonly CsvFolder folder = CsvFolder.Example();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_example_folder_is_accepted_whole_and_a_second_time_unchanged()
    {
        var (code, first, error) = await ImportAsync(folder.Path);

        Assert.Equal((0, ""), (code, error));
        Assert.Equal(17, Total(first, "accepted"));
        Assert.Equal(JsonValueKind.Null, first.GetProperty("rejects").ValueKind);
        Assert.Equal(16, await CountAsync("select count(*) from records where source_id = (select id from sources where name = 'shop-cards')"));

        var (again, second, _) = await ImportAsync(folder.Path);
        Assert.Equal((0, 17, 0), (again, Total(second, "unchanged"), Total(second, "accepted")));
    }

    [Fact] // card 16 says all but one line; the layout of four cylinders, muffler, clamp joints has the rest.
    public async Task Examined_all_stands_for_every_location_of_the_layout()
    {
        await ImportAsync(folder.Path);

        var locations = await CountAsync("select count(*) from layout_locations where layout_id = (select layout_id from type_groups where name = 'trainer-four')");
        Assert.True(locations > 20);
        const string Looks = "select count(*) from location_looks l join records r on r.id = l.record_id where r.source_record_id = 'card 16' and l.state"; // 1: examined
        Assert.Equal(locations - 1, await CountAsync($"{Looks} = 1"));
        Assert.Equal(1, await CountAsync($"{Looks} <> 1"));
    }

    [Fact]
    public async Task Refused_rows_come_back_with_their_reason_and_the_corrected_rejects_complete_the_import()
    {
        folder.Replace("readings.csv", "2026-01-31,806.2", "31.01.2026,806.2");
        folder.Replace("findings.csv", "812.4,crack", "-812.4,crack");
        folder.Replace("looks.csv", "card 17,exhaust/cyl-3/gasket,", "card 17,exhaust/cyl-33/gasket,");
        File.AppendAllText(folder.PathTo("looks.csv"), "card 99,exhaust/cyl-3/gasket,examined,\n");

        var (code, summary, error) = await ImportAsync(folder.Path);

        Assert.Equal((1, ""), (code, error));
        Assert.Equal((14, 3, 1), (Total(summary, "accepted"), Total(summary, "refused"), summary.GetProperty("linesWithoutOwner").GetInt32()));
        var rejects = folder.PathTo("rejects");
        Assert.Equal(["findings.csv", "inspections.csv", "looks.csv", "readings.csv"], Directory.EnumerateFiles(rejects).Select(Path.GetFileName).Order());
        Assert.EndsWith(
            ",2,CELL_NOT_READABLE,reading_date,\"must be a date such as 2026-02-03; got \"\"31.01.2026\"\"\"",
            File.ReadAllLines(Path.Combine(rejects, "readings.csv"))[1], StringComparison.Ordinal);
        Assert.Contains(",NUMBER_OUT_OF_RANGE,time_in_service_hours,", File.ReadAllText(Path.Combine(rejects, "findings.csv")), StringComparison.Ordinal);
        Assert.Contains("LOCATION_NOT_IN_LAYOUT,,\"looks.csv, line 4, location: ", File.ReadAllText(Path.Combine(rejects, "inspections.csv")), StringComparison.Ordinal);
        var looks = File.ReadAllLines(Path.Combine(rejects, "looks.csv"));
        Assert.Equal(["", "LOCATION_NOT_IN_LAYOUT", "", "LINE_WITHOUT_OWNER"], looks.Skip(1).Select(l => l.Split(',')[5]));
        Assert.Equal(["3", "4", "5", "6"], looks.Skip(1).Select(l => l.Split(',')[4])); // of the file that was imported

        Assert.Equal(2, (await ImportAsync(folder.Path)).Code); // the rejects are not written over
        Correct(Path.Combine(rejects, "readings.csv"), "31.01.2026,806.2", "2026-01-31,806.2");
        Correct(Path.Combine(rejects, "findings.csv"), "-812.4,crack", "812.4,crack");
        Correct(Path.Combine(rejects, "looks.csv"), "cyl-33", "cyl-3");
        File.WriteAllLines(Path.Combine(rejects, "looks.csv"), File.ReadAllLines(Path.Combine(rejects, "looks.csv"))[..^1]);
        var (corrected, rest, _) = await ImportAsync(rejects);
        Assert.Equal((0, 3), (corrected, Total(rest, "accepted")));
        Assert.Equal(16, await CountAsync("select count(*) from records"));
    }

    [Fact] // A message beyond what a server reads would end the stream, and the import with it, each time anew.
    public async Task A_row_that_makes_too_large_a_message_is_rejected_and_stops_no_other()
    {
        folder.Replace("findings.csv", "beside the weld", new string('x', 9 * 1024 * 1024));

        var (code, summary, error) = await ImportAsync(folder.Path);

        Assert.Equal((1, "", 16, 1), (code, error, Total(summary, "accepted"), Total(summary, "refused")));
        Assert.Contains(",ROW_TOO_LARGE,,", File.ReadAllText(Path.Combine(folder.PathTo("rejects"), "findings.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("findings.csv", "size_mm", "size", "line 1, column size: must be one of the columns ")]
    [InlineData("readings.csv", "meter_hours", "reject_why", "line 1, column meter_hours: must be a column of this file; got nothing")]
    [InlineData("readings.csv", "12.9", "12.9,7", "line 3, column (last): must be the last of ")]
    [InlineData("findings.csv", "\"beside", "\"beside\"", "findings.csv, line")]
    public async Task A_file_that_is_none_of_the_set_ends_with_2_and_nothing_is_sent(string file, string from, string to, string words)
    {
        folder.Replace(file, from, to);
        var (code, _, error) = await ImportAsync(folder.Path);
        Assert.Equal(2, code);
        Assert.Contains(words, error, StringComparison.Ordinal);
        Assert.Equal(0, await CountAsync("select count(*) from records"));
    }

    [Fact]
    public async Task A_misspelt_file_ends_with_2()
    {
        File.Move(folder.PathTo("findings.csv"), folder.PathTo("finding.csv"));
        var (code, _, error) = await ImportAsync(folder.Path);
        Assert.Equal(2, code);
        Assert.Contains("column (file): must be one of the files ", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_only_stores_nothing_and_finds_what_an_import_would_refuse()
    {
        await ImportTypeGroupAsync();
        folder.Replace("findings.csv", "812.4,crack", "-812.4,crack");

        var (code, summary, _) = await ImportAsync(folder.Path, s => s with { ValidateOnly = true });

        Assert.Equal((1, 15, 1, 1), (code, Total(summary, "valid"), Total(summary, "refused"), Total(summary, "unchanged")));
        Assert.Equal(0, await CountAsync("select count(*) from records"));
    }

    [Fact] // Without aircraft.csv 11 records wait; the type group and the retraction do not.
    public async Task Held_records_are_accepted_on_their_own_once_the_aircraft_is_there()
    {
        using var first = CsvFolder.Example();
        File.Delete(first.PathTo("aircraft.csv"));
        File.Delete(first.PathTo("assignments.csv"));
        File.Delete(first.PathTo("practice_changes.csv")); // what has no aircraft does not wait for one
        File.Delete(first.PathTo("changed_locations.csv"));
        File.Delete(first.PathTo("stock_counts.csv"));
        first.Replace("inspections.csv", "hundred-hour,all", "hundred-hour,");

        var (code, held, _) = await ImportAsync(first.Path, s => s with { Hold = true });
        Assert.Equal((0, 11, 2), (code, Total(held, "held"), Total(held, "accepted")));

        using var later = new CsvFolder();
        File.Copy(folder.PathTo("aircraft.csv"), later.PathTo("aircraft.csv"));
        File.Copy(folder.PathTo("assignments.csv"), later.PathTo("assignments.csv"));
        Assert.Equal(0, (await ImportAsync(later.Path)).Code);
        var (_, again, _) = await ImportAsync(first.Path, s => s with { Hold = true });

        // Whether the server has let a record in by now or this import does, no record waits and none is refused.
        Assert.Equal((0, 13), (Total(again, "held"), Total(again, "unchanged") + Total(again, "accepted")));
    }

    [Fact]
    public async Task A_key_that_may_not_push_or_is_none_ends_with_4_and_says_so()
    {
        foreach (var (key, words) in new[] { (await server.CreateKeyAsync(null, KeyScope.TrendsRead), "SCOPE_REQUIRED"), ("ftk_aaaaaaaaaaaa_b", "KEY_UNKNOWN") })
        {
            File.Delete(folder.PathTo("type_groups.csv"));
            var (code, _, error) = await ImportAsync(folder.Path, s => s with { Key = key, Source = ShopCards.Source });
            Assert.Equal(4, code);
            Assert.Contains(words, error, StringComparison.Ordinal);
            Assert.DoesNotContain(key, error, StringComparison.Ordinal);
            Assert.False(Directory.Exists(folder.PathTo("rejects")));
        }
    }

    [Fact]
    public async Task An_empty_number_is_refused_and_not_read_as_zero()
    {
        folder.Replace("findings.csv", "812.4,crack", ",crack");
        await ImportAsync(folder.Path);
        Assert.Contains("CELL_NOT_READABLE,time_in_service_hours", File.ReadAllText(Path.Combine(folder.PathTo("rejects"), "findings.csv")), StringComparison.Ordinal);
    }

    [Fact] // What the server and the command say of a row is in the words of the files: neither a name of the code nor of the contract.
    public async Task A_refused_row_is_told_in_the_words_of_the_files()
    {
        folder.Replace("findings.csv", "812.4,crack,defect,4.5,,", "812.4,crack,defect,4.5,blue,");
        folder.Replace("findings.csv", "1570.3,leak-trace,,,grey,", "1570.3,hardening,,,,");
        folder.Replace("actions.csv", "card 17/2,ZZ-A01,exhaust/cyl-3/flange-weld,2026-02-03,812.4,weld-repaired,,", "card 17/2,ZZ-AO1,exhaust/cyl-3/flange-weld,2026-02-03,812.4,weld-repaired,5,");
        folder.Replace("actions.csv", "1570.3,replaced", "1570.3,replace");
        folder.Replace("removals.csv", "access,true", "failed,true");
        await ImportAsync(folder.Path);

        var rejects = folder.PathTo("rejects");
        var findings = File.ReadAllText(Path.Combine(rejects, "findings.csv"));
        Assert.Contains("must be absent where the condition is not leak-trace; got blue", findings, StringComparison.Ordinal);
        Assert.Contains("must be a condition of a location of kind 'gasket': leak-trace, ", findings, StringComparison.Ordinal);
        Assert.Contains("; got hardening", findings, StringComparison.Ordinal);
        var actions = File.ReadAllText(Path.Combine(rejects, "actions.csv"));
        Assert.Contains("must be absent where the kind is not replaced; got 5", actions, StringComparison.Ordinal);
        Assert.Contains("must be a registered aircraft; got \"\"ZZ-AO1\"\"; did you mean ZZ-A01?", actions, StringComparison.Ordinal);
        Assert.Contains("must be one of stop-drilled, ", actions, StringComparison.Ordinal);
        Assert.Contains("; got \"\"replace\"\"; did you mean replaced?", actions, StringComparison.Ordinal);
        Assert.Contains(
            "must be false where the reason is failed; got true", File.ReadAllText(Path.Combine(rejects, "removals.csv")), StringComparison.Ordinal);
        foreach (var file in Directory.EnumerateFiles(rejects))
            Assert.DoesNotMatch("CONDITION_[A-Z]+_|[A-Z]+_KIND_[A-Z]|TRACE_COLOUR|REMOVAL_REASON|\"year\"", File.ReadAllText(file).Replace("CONDITION_NOT_AT_KIND", "", StringComparison.Ordinal));
    }

    private async Task ImportTypeGroupAsync()
    {
        using var only = new CsvFolder();
        File.Copy(folder.PathTo("type_groups.csv"), only.PathTo("type_groups.csv"));
        Assert.Equal(0, (await ImportAsync(only.Path)).Code);
    }

    private static void Correct(string file, string from, string to)
    {
        var text = File.ReadAllText(file);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(from, to, StringComparison.Ordinal));
    }

    private static int Total(JsonElement summary, string count) =>
        summary.GetProperty("files").EnumerateArray().Sum(f => f.GetProperty(count).GetInt32());

    private Task<(int Code, JsonElement Summary, string Error)> ImportAsync(string folder, Func<Given, Given>? change = null)
    {
        var given = new Given(server.Key);
        return ImportRunner.ImportAsync(server, folder, change?.Invoke(given) ?? given);
    }

    private async Task<long> CountAsync(string sql)
    {
        await using var command = server.Database.DataSource.CreateCommand(sql);
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
