using FleetTrend.Results.Observing;
using FleetTrend.Store.Results;
using FleetTrend.Trends.AuthorityDrafts;

namespace FleetTrend.Results.Reading;

/// <summary>Drafts for an authority, put together from the observations of a published moment.</summary>
public sealed class AuthorityDraftReader(AircraftObserver observer)
{
    /// <summary>One for each finding of an aircraft, the newest first; null where it was none then.</summary>
    public async Task<IReadOnlyList<AuthorityDraft>?> ReadAsync(PublishedTrends published, string registration, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(published);
        var states = await observer.ReadStatesAsync(published.AsOf, registration, ct);
        var fleet = await observer.ReadFleetAsync(published.AsOf, ct);
        if (await observer.ReadAsync(fleet, await observer.ReadKindsAsync(ct), states, keep: false, ct) is not [var aircraft])
            return null;
        var layout = fleet.Layouts.GetValueOrDefault(aircraft.TypeGroup);
        return AuthorityDraft.Build(aircraft, layout?.Locations ?? [], aircraft.TypeGroup, published.AsOf);
    }
}
