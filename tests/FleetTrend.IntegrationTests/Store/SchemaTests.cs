using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Store;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Sources;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>The rules that stand in the database itself: plain SQL cannot break them.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SchemaTests(PostgresFixture postgres)
{
    private const string Hash = "decode(repeat('00', 32), 'hex')";

    [Fact]
    public async Task Plain_sql_that_breaks_a_rule_is_refused_by_the_rule_of_that_name()
    {
        await using var store = await CreateAsync(postgres);
        await ExecuteAsync(store, "insert into aircraft (registration) values ('ZZ-A01')");
        await ExecuteAsync(store, Envelope(1, "r-1", 1, 7));
        await ExecuteAsync(store, Envelope(2, "r-2", 1, 6));
        await ExecuteAsync(store, "insert into inspections values (2, date '2025-01-01', 1.0, 1)");
        await ExecuteAsync(store, Finding("exhaust/cyl-3/flange-weld", "2025-01-01", "812.4", 1, 1));
        await ExecuteAsync(store, "insert into flags (subject, kind, state, base, type_group, event_count, body_json, raise_time, last_seen_time) "
            + "values ('s', 'k', 1, 'b', 'g', 1, '{}', now(), now())");

        (string Rule, string Statement)[] broken =
        [
            ("ix_aircraft_registration", "insert into aircraft (registration) values ('ZZ-A01')"),
            ("ck_aircraft_registration", "insert into aircraft (registration) values ('zz-a02')"),
            ("ix_records_source_id_source_record_id_revision", Envelope(3, "r-1", 1, 7)),
            ("ck_records_revision", Envelope(3, "r-3", 0, 7)),
            ("ck_records_kind", Envelope(3, "r-3", 1, 12)),
            ("ck_records_aircraft_id", Envelope(3, "r-3", 1, 10)),
            ("ck_records_aircraft_id", Envelope(3, "r-3", 1, 11)),
            ("ck_records_source_record_id", Envelope(3, "", 1, 7)),
            ("ck_records_retraction", Envelope(3, "r-3", 1, 9, aircraft: "null")),
            ("ck_records_aircraft_id", Envelope(3, "r-3", 2, 9)),
            ("ck_records_aircraft_id", Envelope(3, "r-3", 1, 7, aircraft: "null")),
            ("fk_records_aircraft_aircraft_id", Envelope(3, "r-3", 1, 7, aircraft: "99")),
            ("fk_records_sources_source_id", Envelope(3, "r-3", 1, 7, source: 99)),
            ("ck_records_content_hash", Envelope(3, "r-3", 1, 7, hash: "'\\x00'")),
            ("pk_findings", Finding("exhaust/cyl-3/flange-weld", "2025-01-01", "812.4", 1, 1)),
            ("fk_findings_locations_location", Finding("exhaust/cyl-9/flange-weld", "2025-01-01", "812.4", 1, 2)),
            ("fk_findings_records_record_id", Finding("exhaust/cyl-3/flange-weld", "2025-01-01", "812.4", 1, 99)),
            ("ck_findings_time_in_service_hours", Finding("exhaust/cyl-3/flange-weld", "2025-01-01", "-0.1", 1, 2)),
            ("ck_findings_condition", Finding("exhaust/cyl-3/flange-weld", "2025-01-01", "1", 11, 2)),
            ("ck_findings_found_date", Finding("exhaust/cyl-3/flange-weld", "1824-01-01", "1", 1, 2)),
            ("fk_location_looks_inspections_record_id", "insert into location_looks values (1, 'exhaust/cyl-3/gasket', 1, 0)"),
            ("pk_location_looks", "insert into location_looks values (2, 'exhaust/cyl-3/gasket', 1, 0), (2, 'exhaust/cyl-3/gasket', 2, 0)"),
            ("ck_location_looks_state", "insert into location_looks values (2, 'exhaust/cyl-3/gasket', 4, 0)"),
            ("ck_actions_part_hours", "insert into actions values (1, 'exhaust/cyl-3/gasket', date '2025-01-01', 1.0, 2, 0.0, null)"),
            ("fk_locations_location_kinds_kind", "insert into locations values ('exhaust/cyl-3/thing', 'thing')"),
            ("pk_locations", "insert into locations values ('exhaust/cyl-3/gasket', 'clamp')"),
            ("ck_locations_path", "insert into locations values ('gasket', 'gasket')"),
            ("ix_flags_subject", "insert into flags (subject, kind, state, base, type_group, event_count, body_json, raise_time, last_seen_time, "
                + "answered_by, answer_time) values ('s', 'k', 2, 'b', 'g', 1, '{}', now(), now(), 'x', now())"),
            ("ck_flags_answer", "update flags set state = 2"),
            ("ck_source_codes_meaning", "insert into source_codes (source_id, kind, code, condition) values (1, 1, 'x', 1)"),
            ("fk_source_codes_locations_location", "insert into source_codes (source_id, kind, code, location) values (1, 1, 'x', 'exhaust/none/here')"),
            ("ix_held_records_source_id_source_record_id_revision", Held("r-1", 1) + "; " + Held("r-1", 1)),
            ("ck_held_records_revision", Held("r-1", 0)),
            ("fk_held_codes_held_records_held_record_id", "insert into held_codes values (99, 1, 'x')"),
            ("ck_reports_period", "insert into reports (base, period_start_date, period_end_date, as_of, code_version, parameters_json, subject, text, html, "
                + "message_id_seed) values ('*', date '2026-03-08', date '2026-03-02', now(), '1', '{}', 's', '', '', '')"),
        ];
        foreach (var (rule, statement) in broken)
        {
            var refusal = await Assert.ThrowsAsync<PostgresException>(() => ExecuteAsync(store, statement));
            Assert.Equal((rule, statement), (refusal.ConstraintName, statement));
        }
    }

    [Fact]
    public async Task Hours_keep_one_decimal_and_times_are_utc_instants()
    {
        await using var store = await CreateAsync(postgres);

        Assert.Equal(0L, await store.ScalarAsync<long>(
            "select count(*) from information_schema.columns where table_schema = 'public' and column_name like '%hours' "
            + "and (data_type <> 'numeric' or numeric_precision <> 9 or numeric_scale <> 1)"));
        Assert.Equal(0L, await store.ScalarAsync<long>(
            "select count(*) from information_schema.columns where table_schema = 'public' and data_type = 'timestamp without time zone'"));
    }

    [Fact]
    public async Task Several_processes_that_start_at_once_on_an_empty_database_all_come_up()
    {
        await using var database = await postgres.CreateDatabaseAsync();
        var processes = Enumerable.Range(0, 3)
            .Select(_ => new ServiceCollection().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider()).ToList();

        await Task.WhenAll(processes.Select(process => Task.Run(() => StoreSchema.MigrateAsync(process, default))));

        var layouts = processes[0].GetRequiredService<LayoutStore>();
        Assert.Equal(
            ShippedLayouts.All.Select(layout => layout.Name).Order(StringComparer.Ordinal),
            (await layouts.ListAsync(100, null, default)).Items.Select(layout => layout.Name));
        await using (var context = await processes[0].GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync())
            Assert.False(context.Database.HasPendingModelChanges(), "The mappings have changed without a migration.");
        foreach (var process in processes)
            await process.DisposeAsync();
    }

    [Fact]
    public async Task Kinds_are_added_once_and_a_new_version_says_shipped_ones_anew_and_leaves_an_operators_alone()
    {
        await using var store = await CreateAsync(postgres);
        var layouts = store.StartProcess().GetRequiredService<LayoutStore>();
        var fitting = Kind("oil-cooler-fitting", "Fitting of the oil cooler");
        Assert.Equal(ShippedKinds.All.OrderBy(k => k.Name, StringComparer.Ordinal), (await layouts.ListKindsAsync(100, null, default)).Items);

        Assert.Equal(AddState.Added, (await layouts.CheckKindAsync(fitting, default)).State);
        Assert.Equal(AddState.Added, (await layouts.AddKindAsync(fitting, default)).State);
        Assert.Equal(AddState.Unchanged, (await layouts.AddKindAsync(Kind("oil-cooler-fitting", "Fitting of the oil cooler"), default)).State);
        Assert.Equal(AddState.NameInUse, (await layouts.AddKindAsync(Kind("oil-cooler-fitting", "Other"), default)).State);
        Assert.Equal(AddState.NameInUse, (await layouts.AddKindAsync(Kind("gasket", "Mine"), default)).State);

        await layouts.ShipKindsAsync([Kind("gasket", "Said better"), Kind("oil-cooler-fitting", "Shipped later"), Kind("new", "New")], default);
        var kinds = await layouts.ReadKindsAsync(default);
        Assert.Equal("Said better", kinds["gasket"].Title);
        Assert.Equal(fitting, kinds["oil-cooler-fitting"]);
        Assert.Equal("New", kinds["new"].Title);
        Assert.Equal(ShippedKinds.Get("clamp"), kinds["clamp"]);

        static LocationKind Kind(string name, string title) => new(
            name, title, "Look.", null, [Condition.LeakTrace, Condition.Crack], [Condition.LeakTrace], [Condition.Crack],
            [new(Condition.Crack, ["Check this.", "Check that."])], ["Torque."]);
    }

    [Fact]
    public async Task Layouts_type_groups_and_sources_are_added_once_and_never_changed()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var layouts = process.GetRequiredService<LayoutStore>();
        var layout = new Layout("invented", "Invented", [new Location("exhaust/ring/weld", ShippedKinds.Get("place"), "Look.", "7810"), new Location("exhaust/cyl-1/gasket", ShippedKinds.Get("gasket"))]);

        Assert.Equal(new AddResult(AddState.Added), await layouts.AddLayoutAsync(layout, default));
        Assert.Equal(new AddResult(AddState.Unchanged), await layouts.AddLayoutAsync(layout, default));
        Assert.Equal(AddState.NameInUse, (await layouts.AddLayoutAsync(layout with { Locations = [layout.Locations[0]] }, default)).State);
        Assert.Equal(
            new AddResult(AddState.PathHasOtherKind, "exhaust/cyl-1/gasket", "gasket"),
            await layouts.AddLayoutAsync(new Layout("other", "", [new Location("exhaust/cyl-1/gasket", ShippedKinds.Get("clamp"))]), default));
        await Assert.ThrowsAsync<ArgumentException>(
            () => layouts.AddLayoutAsync(layout with { Name = "twice", Locations = [layout.Locations[0], layout.Locations[0]] }, default));
        Assert.Equivalent(layout, await layouts.GetAsync("invented", default), strict: true);
        Assert.Null(await layouts.GetAsync("other", default));

        Assert.Equal(AddState.LayoutUnknown, (await layouts.AddTypeGroupAsync(new TypeGroup("rings", "Rings", "nothing"), default)).State);
        Assert.Equal(AddState.Added, (await layouts.AddTypeGroupAsync(new TypeGroup("rings", "Rings", "invented"), default)).State);
        Assert.Equal(AddState.Unchanged, (await layouts.AddTypeGroupAsync(new TypeGroup("rings", "Rings", "invented"), default)).State);
        Assert.Equal(AddState.NameInUse, (await layouts.AddTypeGroupAsync(new TypeGroup("rings", "Other", "invented"), default)).State);
        Assert.Equal("invented", (await layouts.ReadByTypeGroupAsync(default))["rings"].Name);
        Assert.Equal([StoreFixture.TypeGroup, "rings"], (await layouts.ListTypeGroupsAsync(10, null, default)).Items.Select(group => group.Name));

        var sources = process.GetRequiredService<SourceStore>();
        var (result, stored) = await sources.AddAsync("other-cards", "Other", default);
        Assert.Equal((AddState.Added, "Other"), (result.State, stored.Title));
        Assert.Equal((new AddResult(AddState.Unchanged), stored), await sources.AddAsync("other-cards", "Other", default));
        Assert.Equal(AddState.NameInUse, (await sources.AddAsync("other-cards", "Another", default)).Result.State);
        Assert.Equal(["other-cards", StoreFixture.Source], (await sources.ReadNamesAsync(default)).Order(StringComparer.Ordinal));
        var page = await sources.ListAsync(1, null, default);
        Assert.Equal(StoreFixture.Source, Assert.Single((await sources.ListAsync(1, page.NextPageToken, default)).Items).Name);
    }

    private static string Envelope(int id, string recordId, int revision, int kind, string aircraft = "1", int source = 1, string hash = Hash) =>
        "insert into records (id, source_id, source_record_id, revision, kind, aircraft_id, accept_time, content_hash) "
        + $"values ({id}, {source}, '{recordId}', {revision}, {kind}, {aircraft}, now(), {hash})";

    private static string Held(string recordId, int revision) =>
        "insert into held_records (source_id, source_record_id, revision, registration, record, content_hash, hold_time) "
        + $"values (1, '{recordId}', {revision}, 'ZZ-A01', '', {Hash}, now())";

    private static string Finding(string location, string date, string hours, int condition, int recordId) =>
        "insert into findings (record_id, location, found_date, time_in_service_hours, condition, grade, trace_colour, method) "
        + $"values ({recordId}, '{location}', date '{date}', {hours}, {condition}, 1, 0, 0)";

    private static async Task ExecuteAsync(StoreFixture store, string statement)
    {
        await using var command = store.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}
