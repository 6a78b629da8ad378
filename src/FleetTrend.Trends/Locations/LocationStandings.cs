using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Locations;

/// <summary>
/// Each place of each aircraft against the same place on the others. By location and not by kind: one bad weld among the sound
/// ones of its kind would be diluted, and places of one kind do not have one rate.
/// </summary>
internal static class LocationStandings
{
    private const string Method =
        "observed over expected at the rate of the same place on the other aircraft of the type group; exact conditional limits "
        + "(Przyborowski and Wilenski 1940; Clopper and Pearson 1934)";

    /// <summary>Places where a condition was seen more than once, strongest first; the q-values are over all places tested.</summary>
    /// <param name="groups">The type groups.</param>
    /// <param name="baseOf">Base by registration.</param>
    /// <param name="confidence">Confidence of the intervals.</param>
    /// <param name="restarts">From when on a place counts; as one of the others it keeps its whole past.</param>
    public static IReadOnlyList<LocationStanding> Of(
        IReadOnlyList<TypeGroupObservations> groups, IReadOnlyDictionary<string, string> baseOf, double confidence, FlagRestarts restarts)
    {
        var tests = groups.SelectMany(Tests).Select(t => restarts.Any ? Restarted(t, restarts) : t).OfType<Test>().ToList();
        var q = FalseDiscovery.QValues([.. tests.Select(t => t.Standing.UpperPValue)]);
        return [.. tests
            .Select((t, i) => (Test: t, QValue: q[i]))
            .Where(t => t.Test.IsSeenAgain)
            .Select(t => Standing(t.Test, t.QValue, tests.Count, baseOf, confidence))
            .OrderBy(s => s.QValue).ThenBy(s => s.PValue.Value)
            .ThenBy(s => s.Registration, StringComparer.Ordinal)
            .ThenBy(s => s.TypeGroup, StringComparer.Ordinal)
            .ThenBy(s => s.Location, StringComparer.Ordinal)
            .ThenBy(s => s.Condition)];
    }

    // Where a whole group had no event there is nothing to tell apart: given that total, no count of an aircraft could be any other.
    private static IEnumerable<Test> Tests(TypeGroupObservations like)
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
                    yield return new Test(like.TypeGroup, location, watched[standing.Unit], condition, standing);
            }
        }
    }

    /// <summary>The same place with what it had since its restart, against the whole past of the others; null where no hours are left.</summary>
    private static Test? Restarted(Test test, FlagRestarts restarts)
    {
        if (restarts.Of(test.Aircraft.Registration, test.Location.Location, test.Condition) is not { } restart)
            return test;
        var stratum = test.Location.After(restarts, test.Condition).Stratum(test.Condition, test.Aircraft.Registration, test.Location);
        return LeaveOneOutTest.Test([stratum]).Standings.SingleOrDefault(s => s.Unit == test.Aircraft.Registration) is { } standing
            ? test with { Aircraft = test.Aircraft.After(restart), Standing = standing }
            : null;
    }

    private static LocationStanding Standing(
        Test test, double qValue, int comparisons, IReadOnlyDictionary<string, string> baseOf, double confidence)
    {
        var standing = test.Standing;
        var counted = test.Aircraft.Counted(test.Condition).ToList();
        return new LocationStanding
        {
            Registration = standing.Unit,
            Base = baseOf[standing.Unit],
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
            QValue = qValue,
            Comparisons = comparisons,
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

    private sealed record Test(
        string TypeGroup, LocationObservations Location, AircraftAtLocation Aircraft, Condition Condition, UnitStanding Standing)
    {
        public bool IsSeenAgain => Aircraft.Events.Count(e => e.Condition == Condition) > 1;
    }
}
