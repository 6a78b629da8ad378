using System.Text.Json;
using CsCheck;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Sources;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 9, and other things that must hold for any history: properties by definition, over random histories.</summary>
public sealed class OrderOfArrivalMeansNothingTests
{
    private const int Repeats = 500;
    private static readonly string[] Locations = [Weld, Gasket, OtherGasket];

    /// <summary>What happened: a kind of record, days and tenths of hours since the one before, a place, and a choice within the kind.</summary>
    private static readonly Gen<List<(int What, int Days, int Tenths, int Location, int Choice)>> Happenings =
        Gen.Select(Gen.Int[0, 7], Gen.Int[0, 9], Gen.Int[0, 90], Gen.Int[0, 2], Gen.Int[1, 9]).List[0, 40];

    private static readonly Gen<int> WatchFrom = Gen.Int[-20, 40];

    [Fact]
    public void The_order_of_records_in_a_history_does_not_matter() =>
        Gen.Select(Happenings, WatchFrom, Gen.Int).Sample(
            (happenings, watchFrom, seed) =>
            {
                var history = Write(happenings, watchFrom).History;
                var random = new Random(seed);
                var shuffled = history with
                {
                    Readings = Shuffled(history.Readings, random),
                    Installations = Shuffled(history.Installations, random),
                    Removals = Shuffled(history.Removals, random),
                    Inspections = Shuffled(history.Inspections, random),
                    Findings = Shuffled(history.Findings, random),
                    Actions = Shuffled(history.Actions, random),
                };
                Assert.Equal(Text(Fleet(1000, history)[0]), Text(Fleet(1000, shuffled)[0]));
            },
            iter: Repeats);

    [Fact] // Looks that find nothing, added while nothing is open: the same events, exposure and ends of lives.
    public void More_good_looks_while_nothing_is_open_change_no_event()
    {
        var watched = new InventedAircraft().Installed(0, 0, Weld).Good(10, 100, Weld);
        Gen.Int[0, 39].List[0, 20].Sample(
            days =>
            {
                var aircraft = Cracks();
                foreach (var day in days.Distinct().Where(d => d is not (20 or 30)))
                {
                    if (day is < 20 or > 22 and < 30)
                        aircraft.Good(day, day * 10, Weld);
                }

                var plain = Cracks().Observe();
                var more = aircraft.Observe();
                Assert.Equal(plain.Events.Select(Identity), more.Events.Select(Identity));
                Assert.Equal(plain.Exposures.Sum(e => e.Duration.Tenths), more.Exposures.Sum(e => e.Duration.Tenths));
            },
            iter: Repeats);
        Assert.Single(watched.Observe().Exposures);

        static InventedAircraft Cracks() => new InventedAircraft()
            .Installed(0, 0, Weld).Found(20, 200, Weld, Condition.Crack).Did(22, 220, Weld, ActionKind.WeldRepaired)
            .Found(30, 300, Weld, Condition.Crack).Good(39, 390, Gasket);
        static (Condition, Hours, int, ActionKind?) Identity(Recurrences.LocationEvent e) => (e.Condition, e.Found, e.Ordinal, e.SinceAction);
    }

    [Fact]
    public void Exposure_of_a_location_is_not_longer_than_from_its_first_watched_record_to_its_last_look() =>
        Gen.Select(Happenings, WatchFrom).Sample(
            (happenings, watchFrom) =>
            {
                var aircraft = Write(happenings, watchFrom);
                var seen = aircraft.Observe();
                foreach (var location in seen.Exposures.GroupBy(e => e.Location))
                {
                    var spans = Looks(aircraft.History, location.Key).Where(l => l.Date >= Day(watchFrom)).ToList();
                    var starts = aircraft.History.Installations.Where(i => i.Content.Location == location.Key).Select(i => i.Content.TimeInService)
                        .Concat(aircraft.History.Actions.Where(a => a.Content.Location == location.Key).Select(a => a.Content.TimeInService))
                        .Concat(spans.Select(l => l.Hours));
                    Assert.True(location.Sum(e => e.Duration.Tenths) <= (spans.Max(l => l.Hours) - starts.Min()).Tenths);
                    Assert.True(location.Max(e => e.To) <= spans.Max(l => l.Hours));
                    Assert.All(location, e => Assert.True(e.Duration > Hours.Zero));
                }
            },
            iter: Repeats);

    [Fact]
    public void Every_life_that_takes_part_in_a_fit_is_one_that_statistics_accept() =>
        Gen.Select(Happenings, WatchFrom).Sample(
            (happenings, watchFrom) =>
            {
                foreach (var life in Write(happenings, watchFrom).Observe().Lives)
                {
                    var fit = life.ForFit();
                    Assert.Equal(life.Exclusion is null, fit is not null);
                    Assert.True(life.Entry <= life.LastGood);
                    Assert.True(fit is null || life.Ending == Lives.LifeEnding.Failed == fit.Value.Failed);
                    Assert.True(fit is null || !fit.Value.IsExact);
                    Assert.True(life.AgeNow is null || life.AgeNow >= life.LastGood);
                    Assert.NotEmpty(life.Evidence);
                }
            },
            iter: Repeats);

    [Fact] // A defect finding is in one event, or in none where it was of an event closed before the watch.
    public void No_finding_is_counted_in_two_events() =>
        Gen.Select(Happenings, WatchFrom).Sample(
            (happenings, watchFrom) =>
            {
                var history = Write(happenings, watchFrom).History;
                var seen = Fleet(1000, history)[0];
                foreach (var finding in history.Findings)
                {
                    var count = seen.Events.Count(e => e.Evidence.Contains(finding.Key));
                    var isWatchedDefect = finding.Content.FoundDate >= Day(watchFrom) && finding.Content.Grade == FindingGrade.Defect;
                    Assert.True(isWatchedDefect ? count == 1 : count <= 1 || finding.Content.Grade == FindingGrade.Accepted);
                }

                Assert.All(seen.Events.Where(e => !e.PresentAtEntry), e => Assert.True(e.LastGood <= e.Found));
            },
            iter: Repeats);

    private static IEnumerable<(DateOnly Date, Hours Hours)> Looks(AircraftHistory history, string location) =>
        history.Inspections.Where(i => i.Content.Looks.Any(l => l.Location == location && l.State == LookState.Examined))
            .Select(i => (i.Content.InspectionDate, i.Content.TimeInService))
            .Concat(history.Findings.Where(f => f.Content.Location == location).Select(f => (f.Content.FoundDate, f.Content.TimeInService)));

    private static InventedAircraft Write(List<(int What, int Days, int Tenths, int Location, int Choice)> happenings, int watchFrom)
    {
        var aircraft = new InventedAircraft(watchFrom: watchFrom);
        var day = -10;
        var tenths = 1000;
        foreach (var (what, days, more, place, choice) in happenings)
        {
            day += days;
            tenths += days == 0 ? 0 : more;
            var hours = tenths / 10.0;
            var location = Locations[place];
            _ = what switch
            {
                0 or 1 => aircraft.Good(day, hours, location),
                2 => aircraft.NotExamined(day, hours, location),
                3 => aircraft.Found(day, hours, location, choice > 3 ? Condition.Crack
                    : Condition.LeakTrace, choice, choice > 8 ? FindingGrade.Accepted : FindingGrade.Defect),
                4 or 5 => aircraft.Did(day, hours, location, (ActionKind)choice),
                6 => aircraft.Removed(day, hours, location, (RemovalReason)(1 + (choice % 6)), choice > 7),
                _ => aircraft.Installed(day, hours, location, choice > 7 ? null : 10 * choice, choice % 2 == 0 ? "G" + choice : null),
            };
        }

        return aircraft;
    }

    private static List<Recorded<T>> Shuffled<T>(IReadOnlyList<Recorded<T>> records, Random random)
    {
        var all = records.ToArray();
        random.Shuffle(all);
        return [.. all];
    }

    private static string Text(AircraftObservations seen) => JsonSerializer.Serialize(seen);
}
