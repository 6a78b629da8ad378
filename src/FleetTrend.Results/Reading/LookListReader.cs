using FleetTrend.Results.Observing;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.LookLists;

namespace FleetTrend.Results.Reading;

/// <summary>Look lists, put together from published results and the observations of the same moment.</summary>
public sealed class LookListReader(ResultReader results, AircraftObserver observer)
{
    /// <summary>The look list of an aircraft at a published moment; null where it was none then.</summary>
    public async Task<LookList?> ReadAsync(PublishedTrends published, string registration, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(published);
        var states = await observer.ReadStatesAsync(published.AsOf, registration, ct);
        var fleet = await observer.ReadFleetAsync(published.AsOf, ct);
        if (await observer.ReadAsync(fleet, await observer.ReadKindsAsync(ct), states, keep: false, ct) is not [var aircraft])
            return null;
        var chances = await results.ReadAsync(published, Analyses.FailureChances, new ResultFilter { Registration = registration }, ct);
        return LookList.Build(
            aircraft,
            fleet.Layouts.TryGetValue(aircraft.TypeGroup, out var layout) ? layout.Locations : [],
            chances.FirstOrDefault(c => c.TypeGroup == aircraft.TypeGroup),
            [.. ResultReader.FleetOf(published).Flags.Where(f => f.Registration == registration)],
            ResultReader.ParametersOf(published));
    }
}
