using FleetTrend.Contracts.V1;
using FleetTrend.Observations;
using FleetTrend.Results.Observing;
using FleetTrend.Store.Histories;

namespace FleetTrend.Api.Trends;

/// <summary>The aircraft of a request as the refresh observes them, for the rows behind its numbers.</summary>
internal sealed class EvidenceReader(AircraftObserver observer)
{
    /// <summary>
    /// Those of the registration or type group asked for, by registration, as known at a moment that
    /// <see cref="Knowledge.FixAsOfAsync"/> has fixed, or at one before it.
    /// </summary>
    public async Task<IReadOnlyList<AircraftObservations>> ReadAsync(ListEvidenceRequest request, DateTimeOffset asOf, CancellationToken ct)
    {
        var registration = request.Registration.ToUpperInvariant();
        var states = (await observer.ReadStatesAsync(asOf, registration.Length == 0 ? null : registration, ct))
            .Where(s => request.TypeGroup.Length == 0 || s.TypeGroups.Contains(request.TypeGroup, StringComparer.Ordinal));
        var aircraft = await observer.ReadAsync(
            await observer.ReadFleetAsync(asOf, ct), await observer.ReadKindsAsync(ct), [.. states], keep: false, ct);
        return [.. aircraft.OrderBy(a => a.Registration, StringComparer.Ordinal)];
    }
}
