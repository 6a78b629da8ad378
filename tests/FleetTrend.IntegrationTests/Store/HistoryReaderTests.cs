using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>What is read is what was pushed, as it was known at a moment. Expected values are the pushed records themselves.</summary>
[Collection(SharedPostgres.Name)]
public sealed class HistoryReaderTests(PostgresFixture postgres)
{
    private static readonly DateOnly Day = new(2025, 3, 4);

    [Fact]
    public async Task Every_kind_of_record_comes_back_as_it_went_in()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var airframe = new Airframe
        {
            Registration = "ZZ-A01",
            WatchStartDate = new DateOnly(2024, 1, 1),
            Assignments = [new(new DateOnly(2024, 1, 1), "Invented Field", TypeGroup), new(Day, "Other Field", TypeGroup)],
            MeterOffset = Hours.From(-12.3),
            RetiredDate = new DateOnly(2026, 1, 1),
        };
        var inspection = new Inspection
        {
            Registration = "ZZ-A01",
            InspectionDate = Day,
            TimeInService = Hours.From(812.4),
            Occasion = Occasion.Annual,
            Looks = [new(Weld, LookState.Examined, LookMethod.Borescope), new(Gasket, LookState.CouldNotExamine)],
        };
        var finding = new Finding
        {
            Registration = "ZZ-A01",
            Location = Gasket,
            FoundDate = Day,
            TimeInService = Hours.From(812.4),
            Condition = Condition.LeakTrace,
            Grade = FindingGrade.Accepted,
            SizeMillimetres = 0.1,
            TraceColour = TraceColour.Rose,
            Method = LookMethod.PressureTest,
            SameEventAs = "f-0",
            Note = "Übergang, grau",
        };
        RecordContent[] others =
        [
            new MeterReading("ZZ-A01", Day, Hours.From(9_999_999.9)),
            new MeterChange("ZZ-A01", Day, Hours.From(0.1), Hours.Zero),
            new Installation
            {
                Registration = "ZZ-A01", Location = Gasket, InstallationDate = Day, TimeInService = Hours.From(812.4), PartHours = Hours.Zero,
                SerialNumber = "S-1", PartNumber = "gasket, two layers",
            },
            new Installation { Registration = "ZZ-A01", Location = Weld, InstallationDate = Day, TimeInService = Hours.From(812.4) },
            new Removal
            {
                Registration = "ZZ-A01", Location = Gasket, RemovalDate = Day, TimeInService = Hours.From(812.4), Reason = RemovalReason.WithSisters,
                ExaminedGood = true, SerialNumber = "S-0",
            },
            new CorrectiveAction
            {
                Registration = "ZZ-A01", Location = Gasket, ActionDate = Day, TimeInService = Hours.From(812.4), Kind = ActionKind.Replaced,
                PartHours = Hours.From(3.5), Note = "set of four",
            },
        ];
        RecordContent[] all = [airframe, inspection, finding, .. others];

        var results = await process.GetRequiredService<RecordWriter>().SaveAsync([.. all.Select((content, i) => Record($"r-{i}", 1, content))], default);

        Assert.All(results, result => Assert.IsType<SaveResult.Accepted>(result));
        var history = Assert.Single(await ReadAsync(process));
        Assert.Equal("ZZ-A01", history.Registration);
        Assert.Equal(((SaveResult.Accepted)results[0]).AcceptTime, history.Airframes[0].AcceptTime);
        Assert.Equivalent(airframe, Assert.Single(history.Airframes).Content, strict: true);
        Assert.Equal(new RecordKey(StoreFixture.Source, "r-1", 1), Assert.Single(history.Inspections).Key);
        Assert.Equivalent(inspection with { Looks = [.. inspection.Looks.Reverse()] }, history.Inspections[0].Content, strict: true); // by path
        Assert.Equal(finding, Assert.Single(history.Findings).Content);
        Assert.Equal(others[0], Assert.Single(history.Readings).Content);
        Assert.Equal(others[1], Assert.Single(history.MeterChanges).Content);
        Assert.Equal(others[2..4], history.Installations.Select(item => item.Content));
        Assert.Equal(others[4], Assert.Single(history.Removals).Content);
        Assert.Equal(others[5], Assert.Single(history.Actions).Content);
    }

    [Fact]
    public async Task Revisions_in_any_order_give_the_same_state()
    {
        NewRecord[] revisions =
        [
            Crack("f-1", "ZZ-A01", 800), Crack("f-1", "ZZ-A01", 801, 2), Crack("f-1", "ZZ-A02", 802, 3),
            Crack("f-2", "ZZ-A01", 900), Retraction("f-2", 2),
            Crack("f-3", "ZZ-A01", 1000), Retraction("f-3", 2), Crack("f-3", "ZZ-A01", 1001, 3),
        ];
        for (var seed = 0; seed < 6; seed++)
        {
            await using var store = await CreateAsync(postgres);
            var process = store.StartProcess();
            var writer = process.GetRequiredService<RecordWriter>();
            await writer.SaveAsync([Aircraft("ZZ-A01"), Aircraft("ZZ-A02")], default);
            var random = new Random(seed);
            var shuffled = revisions.OrderBy(_ => random.Next()).ToList();

            // A retraction that comes before everything that it could take back is refused: its source sends it again.
            while (shuffled.Count > 0)
            {
                var results = await writer.SaveAsync([.. shuffled.Take(3)], default);
                for (var i = results.Count - 1; i >= 0; i--)
                {
                    var record = shuffled[i];
                    shuffled.RemoveAt(i);
                    if (results[i] is SaveResult.Conflict)
                        shuffled.Add(record);
                }
            }

            var histories = await ReadAsync(process);
            Assert.Equal([(1001.0, 3)], histories[0].Findings.Select(finding => (finding.Content.TimeInService.Value, finding.Key.Revision)));
            Assert.Equal([(802.0, 3)], histories[1].Findings.Select(finding => (finding.Content.TimeInService.Value, finding.Key.Revision)));
            Assert.Equal("ZZ-A02", histories[1].Findings[0].Content.Registration);
        }
    }

    [Fact]
    public async Task An_earlier_moment_shows_what_was_known_then()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var writer = process.GetRequiredService<RecordWriter>();
        var knowledge = process.GetRequiredService<Knowledge>();
        var reader = process.GetRequiredService<HistoryReader>();

        await writer.SaveAsync([Aircraft("ZZ-A01"), Crack("f-1", "ZZ-A01", 800)], default);
        var first = await knowledge.FixAsOfAsync(default);
        await writer.SaveAsync([Crack("f-1", "ZZ-A01", 801, 2), Aircraft("ZZ-A02")], default);
        var second = await knowledge.FixAsOfAsync(default);
        await writer.SaveAsync([Retraction("f-1", 3), Retraction("aircraft-ZZ-A02", 2)], default);
        var third = await knowledge.FixAsOfAsync(default);

        var then = Assert.Single((await reader.ReadAsync(first, default)).Aircraft);
        Assert.Equal(Hours.From(800), Assert.Single(then.Findings).Content.TimeInService);
        var later = (await reader.ReadAsync(second, default)).Aircraft;
        Assert.Equal(["ZZ-A01", "ZZ-A02"], later.Select(history => history.Registration));
        Assert.Equal(Hours.From(801), Assert.Single(later[0].Findings).Content.TimeInService);
        Assert.Empty(Assert.Single((await reader.ReadAsync(third, default)).Aircraft).Findings);
        Assert.Empty((await reader.ReadAsync(first.AddYears(-1), default)).Aircraft);
    }

    [Fact]
    public async Task Practice_changes_are_read_beside_the_aircraft_as_known_at_a_moment()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var (writer, knowledge) = (process.GetRequiredService<RecordWriter>(), process.GetRequiredService<Knowledge>());
        PracticeChange Torque(int day, string? atBase) => new()
        {
            ChangeDate = Day.AddDays(day),
            Base = atBase,
            TypeGroup = TypeGroup,
            Locations = [Gasket, Weld],
            PartNumber = "gasket, two layers",
            What = "torque in two passes",
            Why = "leaks",
        };
        var bare = new PracticeChange { ChangeDate = Day, What = "a mirror for every look" };
        await writer.SaveAsync([Record("p-2", 1, Torque(5, "North")), Record("p-3", 1, bare), Record("p-1", 1, Torque(5, null))], default);
        var first = await knowledge.FixAsOfAsync(default);
        await writer.SaveAsync([Record("p-2", 2, Torque(9, "North")), Retraction("p-1", 2)], default);
        var second = await knowledge.FixAsOfAsync(default);

        var then = await PracticesAsync(process, first);
        Assert.Equal(["p-3", "p-1", "p-2"], then.Select(change => change.Key.SourceRecordId)); // by day, then by identifier
        Assert.Equivalent(bare, then[0].Content, strict: true);
        Assert.Equivalent(Torque(5, "North"), then[2].Content, strict: true);
        Assert.Equal([("p-3", 1), ("p-2", 2)], (await PracticesAsync(process, second)).Select(change => (change.Key.SourceRecordId, change.Key.Revision)));
        Assert.Equal(2, (await process.GetRequiredService<HistoryReader>().ReadAsync(second, default)).PracticeChanges.Count);
    }

    [Fact]
    public async Task Stock_counts_are_read_beside_the_aircraft_as_known_at_a_moment()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var (writer, knowledge) = (process.GetRequiredService<RecordWriter>(), process.GetRequiredService<Knowledge>());
        StockCount Counted(int day, int quantity, int? lead) => new()
        {
            CountDate = Day.AddDays(day),
            Base = "North",
            PartNumber = "gasket, two layers",
            Quantity = quantity,
            LeadTimeDays = lead,
        };
        await writer.SaveAsync([Record("s-2", 1, Counted(5, 4, 21)), Record("s-1", 1, Counted(1, 0, null))], default);
        var first = await knowledge.FixAsOfAsync(default);
        await writer.SaveAsync([Record("s-2", 2, Counted(5, 3, 21)), Retraction("s-1", 2)], default);
        var second = await knowledge.FixAsOfAsync(default);

        var reader = process.GetRequiredService<HistoryReader>();
        Assert.Equal([Counted(1, 0, null), Counted(5, 4, 21)], (await reader.ReadWithoutAircraftAsync(first, default)).StockCounts.Select(c => c.Content));
        Assert.Equal([Counted(5, 3, 21)], (await reader.ReadWithoutAircraftAsync(second, default)).StockCounts.Select(c => c.Content));
    }

    private static async Task<IReadOnlyList<Recorded<PracticeChange>>> PracticesAsync(IServiceProvider process, DateTimeOffset asOf) =>
        (await process.GetRequiredService<HistoryReader>().ReadWithoutAircraftAsync(asOf, default)).PracticeChanges;

    [Fact]
    public async Task Each_aircraft_has_its_own_records_in_order_and_its_layout()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await process.GetRequiredService<SourceStore>().AddAsync("other-cards", "Other", default);
        await process.GetRequiredService<RecordWriter>().SaveAsync(
            [
                Aircraft("ZZ-A01"), Aircraft("ZZ-A02"),
                Record("of-another-source", 1, Aircraft("ZZ-A01").Content, "other-cards"), // two sources may describe one aircraft
                Crack("f-2", "ZZ-A01"), Crack("f-10", "ZZ-A01"), Crack("f-3", "ZZ-A02"),
                Record("i-1", 1, new Inspection
                {
                    Registration = "ZZ-A01", InspectionDate = Day, TimeInService = Hours.From(1), Occasion = Occasion.Other,
                    Looks = [new(Weld, LookState.Examined)],
                }),
            ],
            default);

        var asOf = await process.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        var fleet = await process.GetRequiredService<HistoryReader>().ReadAsync(asOf, default);

        Assert.Equal((asOf, 2), (fleet.AsOf, fleet.Aircraft.Count));
        Assert.Equal(["flange-weld"], fleet.Layouts[TypeGroup].Locations.Where(l => l.Path == Weld).Select(l => l.Kind.Name));
        var one = fleet.Aircraft[0];
        Assert.Equal(["other-cards", "shop-cards"], one.Airframes.Select(airframe => airframe.Key.Source));
        Assert.Equal(["f-10", "f-2"], one.Findings.Select(finding => finding.Key.SourceRecordId)); // same day: by identifier, ordinal
    }

    [Fact]
    public async Task The_directory_knows_current_assignments_and_locations_and_forgets_what_was_taken_back()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var writer = process.GetRequiredService<RecordWriter>();
        var directory = process.GetRequiredService<FleetDirectory>();
        await writer.SaveAsync([Aircraft("ZZ-A01"), Aircraft("ZZ-A02"), Retraction("aircraft-ZZ-A02", 2)], default);

        var known = await directory.ReadAsync(["ZZ-A01", "ZZ-A02", "ZZ-A03"], default);

        var aircraft = Assert.Single(known).Value;
        Assert.Equal([new Assignment(new DateOnly(2024, 1, 1), "Invented Field", TypeGroup)], aircraft.Assignments);
        Assert.Equal("flange-weld", aircraft.Locations[Weld].Kind.Name);
        Assert.False(aircraft.Locations.ContainsKey("exhaust/cyl-5/flange-weld"));
    }

    private static async Task<IReadOnlyList<AircraftHistory>> ReadAsync(IServiceProvider process) =>
        (await process.GetRequiredService<HistoryReader>().ReadAsync(
            await process.GetRequiredService<Knowledge>().FixAsOfAsync(default), default)).Aircraft;
}
