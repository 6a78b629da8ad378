using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.LocationStandings;

/// <summary>
/// Each place of each aircraft against the same place on the others. By location and not by kind: one bad weld among the sound
/// ones of its kind would be diluted, and places of one kind do not have one rate.
/// </summary>
internal sealed class LocationTests
{
    private const string Method =
        "observed over expected at the rate of the same place on the other aircraft of the type group; exact conditional limits "
        + "(Przyborowski and Wilenski 1940; Clopper and Pearson 1934)";

    private LocationTests(IReadOnlyList<double> tests, IReadOnlyList<LocationStanding> seenAgain) =>
        (Tests, SeenAgain) = (tests, seenAgain);

    /// <summary>p-value of every place and condition tested.</summary>
    public IReadOnlyList<double> Tests { get; }

    /// <summary>Places where a condition was seen more than once; what all type groups together decide is still to be settled.</summary>
    public IReadOnlyList<LocationStanding> SeenAgain { get; }

    /// <summary>Tests the places of a type group.</summary>
    /// <param name="inputs">The type group.</param>
    public static LocationTests Test(TypeGroupInputs inputs)
    {
        var tests = PlaceTests(inputs.Observations).ToList();
        return new LocationTests(
            [.. tests.Select(t => t.Standing.UpperPValue)],
            [.. tests.Where(t => t.IsSeenAgain).Select(t => Standing(t, inputs.BaseOf(t.Standing.Unit), inputs.Parameters.Confidence))]);
    }

    // Where a whole group had no event there is nothing to tell apart: given that total, no count of an aircraft could be any other.
    private static IEnumerable<PlaceTest> PlaceTests(TypeGroupObservations like)
    {
        foreach (var location in like.Locations)
        {
            var watched = location.Aircraft.Where(a => a.ExposureTenths > 0).ToDictionary(a => a.Registration, StringComparer.Ordinal);
            foreach (var condition in location.Conditions.Where(location.CanHave))
            {
                var stratum = location.Stratum(condition);
                if (stratum.Events == 0)
                    continue;
                foreach (var standing in LeaveOneOutTest.Test([stratum]).Standings)
                    yield return new PlaceTest(like.TypeGroup, location, watched[standing.Unit], condition, standing);
            }
        }
    }

    private static LocationStanding Standing(PlaceTest test, string atBase, double confidence)
    {
        var standing = test.Standing;
        var counted = test.Aircraft.Counted(test.Condition).ToList();
        return new LocationStanding
        {
            Registration = standing.Unit,
            Base = atBase,
            TypeGroup = test.TypeGroup,
            Location = test.Location.Location,
            Kind = test.Location.Kind.Name,
            Condition = test.Condition,
            Observed = standing.Observed,
            PresentAtEntry = test.Aircraft.Events.Count(e => e.Condition == test.Condition && e.PresentAtEntry),
            NotWatched = test.Aircraft.Events.Count(e => e.Condition == test.Condition && !e.PresentAtEntry && !test.Aircraft.IsCounted(e)),
            Returns = Returns(test.Aircraft, test.Condition),
            ExposureHours = standing.ExposureHours,
            Expected = Figures.Expected(standing.Contributions, confidence),
            OthersCount = test.Location.Aircraft.Count(a => a.ExposureTenths > 0) - 1,
            Ratio = Ratio(standing, confidence),
            PValue = PValue.Exact(standing.UpperPValue),
            QValue = 1,
            Comparisons = 0,
            SinceDate = counted.Count > 0 ? counted.Min(e => e.FoundDate) : null,
            Evidence = [.. counted.SelectMany(e => e.Evidence).Distinct()],
        };
    }

    /// <summary>Events of the rate at a later look than one that was closed, whether by an action or by a good look.</summary>
    private static int Returns(AircraftAtLocation aircraft, Condition condition) =>
        aircraft.Events.FirstOrDefault(e => e.Condition == condition && e.ClosedDate is not null) is { } closed
            ? aircraft.Counted(condition).Count(e => e.Found > closed.Found)
            : 0;

    private static Figure Ratio(UnitStanding standing, double confidence)
    {
        var place = standing.Contributions[0];
        var figure = new Figure
        {
            Confidence = confidence,
            Unit = "",
            Events = standing.Observed,
            ExposureHours = standing.ExposureHours,
            Method = Method,
        };
        return RateRatio.Estimate(place.Observed, place.ExposureHours, checked((int)place.OthersEvents), place.OthersExposureHours, confidence).Match(
            r => figure with
            {
                Value = Figures.Finite(r.Ratio),
                Lower = r.Interval.Lower,
                Upper = Figures.Finite(r.Interval.Upper),
                NotEnoughData = double.IsFinite(r.Ratio) ? null : Figures.OthersHadNone,
            },
            reason => figure with { NotEnoughData = $"not enough data: {NumberWords.Count(reason.Events, "event", "events")}" });
    }

    private sealed record PlaceTest(
        string TypeGroup, LocationObservations Location, AircraftAtLocation Aircraft, Condition Condition, UnitStanding Standing)
    {
        public bool IsSeenAgain => Aircraft.Events.Count(e => e.Condition == Condition) > 1;
    }
}
