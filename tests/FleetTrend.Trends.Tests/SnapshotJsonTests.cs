using System.Text.Json;
using System.Text.Json.Nodes;
using FleetTrend.Observations;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Tests;

public sealed class SnapshotJsonTests
{
    [Fact]
    public void A_snapshot_survives_the_way_to_json_and_back()
    {
        var snapshot = Compute(Fleet());
        Assert.All<object>(
            [snapshot.Rates, snapshot.Recurrences, snapshot.Repeats, snapshot.Levels,
                snapshot.PartLives, snapshot.Flags, snapshot.DataProblems],
            part => Assert.NotEmpty((System.Collections.IEnumerable)part));
        var json = JsonSerializer.Serialize(snapshot, TrendJson.Options);
        var back = JsonSerializer.Deserialize<TrendSnapshot>(json, TrendJson.Options)!;
        Assert.Equal(json, JsonSerializer.Serialize(back, TrendJson.Options));
        Assert.Equal(snapshot.Rates.Select(r => r with { Aircraft = [] }), back.Rates.Select(r => r with { Aircraft = [] }));
        Assert.Equal(snapshot.Rates.SelectMany(r => r.Aircraft), back.Rates.SelectMany(r => r.Aircraft));
        Assert.Equal(snapshot.Fleet.Select(l => l with { Events = null }), back.Fleet.Select(l => l with { Events = null }));
        Assert.Equal(snapshot.Fleet.SelectMany(l => l.Events!), back.Fleet.SelectMany(l => l.Events!));
        Assert.Equal(snapshot.PartLives.SelectMany(t => t.Fits), back.PartLives.SelectMany(t => t.Fits));
        Assert.Equal(snapshot.Flags.Select(f => f.Statement), back.Flags.Select(f => f.Statement));
    }

    [Fact]
    public void The_order_of_aircraft_and_of_their_rows_means_nothing()
    {
        var fleet = Fleet();
        var json = JsonSerializer.Serialize(Compute(fleet), TrendJson.Options);
        Assert.All(Enumerable.Range(0, 10), seed => Assert.Equal(json, JsonSerializer.Serialize(Compute(Shuffled(fleet, seed)), TrendJson.Options)));
    }

    [Fact]
    public void The_moment_is_written_in_utc_and_enums_by_name()
    {
        var asOf = new DateTimeOffset(2026, 1, 1, 2, 0, 0, TimeSpan.FromHours(2));
        var json = JsonSerializer.Serialize(FleetBuilder.Compute(Fleet(), new TrendParameters(), asOf, "test"), TrendJson.Options);
        Assert.Contains("\"asOf\":\"2026-01-01T00:00:00.0000000Z\"", json, StringComparison.Ordinal);
        Assert.Contains("\"condition\":\"Crack\"", json, StringComparison.Ordinal);
        Assert.Contains("\"kind\":\"AirframeDrift\"", json, StringComparison.Ordinal);
    }

    [Fact] // JSON has no infinity: a fleet of edge cases must not need one.
    public void Edge_cases_give_finite_numbers()
    {
        var fleets = new[]
        {
            [],
            [new FleetBuilder("ZZ-1").Build()],
            [new FleetBuilder("ZZ-1").Watched("exhaust/a", "y-weld", 0, 0.1).Found("exhaust/a", "y-weld", 0.1).Build()],
            [
                new FleetBuilder("ZZ-1").Watched("exhaust/a", "y-weld", 0, 100).Found("exhaust/a", "y-weld", 50).Build(),
                new FleetBuilder("ZZ-2").Watched("exhaust/a", "y-weld", 0, 100000).Build(),
                new FleetBuilder("ZZ-3").Watched("exhaust/b", "y-weld", 0, 100000).Build(),
            ],
            [new FleetBuilder("ZZ-1").Life("a", "gasket", 0, 0.1).Life("a", "gasket", 0, 0.1).Life("a", "gasket", 99999.9, 100000).Build()],
            new SimulatedFleet { Seed = 5, Aircraft = 3, CrackRate = 0.00001 }.Build(),
            Fleet(),
        };
        Assert.All(fleets, fleet => Assert.NotEmpty(JsonSerializer.Serialize(Compute(fleet), TrendJson.Options)));
    }

    // Trends of earlier versions stay in the database: with tests of aircraft and places that are made no more, drivers of flags, and a ratio at each
    // repeat, and without levels, counts of events or what the others had at a place.
    [Fact]
    public void Trends_stored_when_aircraft_and_places_were_tested_can_be_read()
    {
        var stored = JsonNode.Parse(JsonSerializer.Serialize(Compute(Fleet()), TrendJson.Options))!.AsObject();
        stored.Remove("levels");
        JsonObject Tested() => new() { ["registration"] = "ZZ-000", ["condition"] = "Crack", ["pValue"] = 0.2, ["drivers"] = new JsonArray() };
        (stored["standings"], stored["locationStandings"]) = (new JsonArray(Tested()), new JsonArray(Tested()));
        foreach (var line in stored["fleet"]!.AsArray())
            line!.AsObject().Remove("events");
        foreach (var flag in stored["flags"]!.AsArray())
            flag!["drivers"] = new JsonArray(new JsonObject { ["location"] = "exhaust/a", ["observed"] = 3 });
        foreach (var repeat in stored["repeats"]!.AsArray())
        {
            (repeat!["expected"], repeat["ratio"]) = (1.5, new JsonObject { ["value"] = 2 });
            repeat.AsObject().Remove("others");
        }
        var read = JsonSerializer.Deserialize<TrendSnapshot>(stored.ToJsonString(), TrendJson.Options)!;
        Assert.Empty(read.Levels);
        Assert.NotEmpty(read.Flags);
        Assert.All(read.Fleet, l => Assert.Null(l.Events));
        Assert.NotEmpty(read.Repeats);
        Assert.All(read.Repeats, r => Assert.Null(r.Others));
    }

    [Fact]
    public void Json_of_something_else_is_refused() => Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<TrendSnapshot>("{\"asOf\":\"2026-01-01T00:00:00Z\"}", TrendJson.Options));

    private static TrendSnapshot Compute(IReadOnlyList<AircraftObservations> fleet) =>
        FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test");

    private static IReadOnlyList<AircraftObservations> Fleet() =>
        [.. new SimulatedFleet { Seed = 3, TroubleFactor = 30, SouthLifeFactor = 0.5, Jitter = 15 }.Build().Select((o, i) => o with
        {
            Problems = [new DataProblem(DataProblemKind.HoursBackwards, o.Registration, FleetBuilder.Start.AddDays(i % 3), "by 3.1 h", [new RecordKey("test", "r1", 1)])],
        })];

    private static List<AircraftObservations> Shuffled(IReadOnlyList<AircraftObservations> fleet, int seed)
    {
        var random = new Random(seed);
        return [.. Mixed(fleet).Select(o => o with { Exposures = Mixed(o.Exposures), Events = Mixed(o.Events), Lives = Mixed(o.Lives) })];

        List<T> Mixed<T>(IReadOnlyList<T> rows)
        {
            T[] copy = [.. rows];
            random.Shuffle(copy);
            return [.. copy];
        }
    }
}
