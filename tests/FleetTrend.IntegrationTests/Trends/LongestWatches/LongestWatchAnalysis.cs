using FleetTrend.Trends;

namespace FleetTrend.IntegrationTests.Trends.LongestWatches;

/// <summary>An analysis that the product does not have.</summary>
public sealed class LongestWatchAnalysis() : Analysis<LongestWatch>("longest-watches")
{
    public override Subject SubjectOf(LongestWatch item) => new(Registration: item.Registration, Location: item.Location);

    public override Headline HeadlineOf(LongestWatch item) => new("", item.Hours, null, null, 0);

    protected override IEnumerable<LongestWatch> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        from aircraft in inputs.Aircraft
        where aircraft.Exposures.Count > 0
        let longest = aircraft.Exposures.MaxBy(e => e.Duration)!
        select new LongestWatch(aircraft.Registration, longest.Location, longest.Duration.Value);
}
