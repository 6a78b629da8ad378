using FleetTrend.Observations;
using FleetTrend.Observations.Keeping;
using FleetTrend.Records;
using FleetTrend.Records.Layouts;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Observed;

namespace FleetTrend.Results.Observing;

/// <summary>
/// Observations of aircraft as known at a moment: the one way from stored records to numbers and to the rows behind them. What is kept and
/// still holds is taken; the rest is observed from its records, a few aircraft at a time, so that memory does not grow with the fleet.
/// </summary>
public sealed class AircraftObserver(HistoryReader histories, ObservedStore observed, LayoutStore layouts)
{
    /// <summary>So many are read at once: enough to make a query worth its while, and few beside a fleet.</summary>
    private const int AircraftAtOnce = 20;

    private volatile MadeFor? made;

    private static readonly Guid Code = CodeIdentity.Compute(typeof(Observe), typeof(FleetHistory));

    /// <summary>The state of every aircraft, or of one, at a moment that is fixed; by registration.</summary>
    public Task<IReadOnlyList<AircraftState>> ReadStatesAsync(DateTimeOffset asOf, string? registration, CancellationToken ct) =>
        observed.ReadStatesAsync(asOf, Code, registration, ct);

    /// <summary>What is known of the fleet besides its aircraft.</summary>
    public Task<FleetHistory> ReadFleetAsync(DateTimeOffset asOf, CancellationToken ct) => histories.ReadWithoutAircraftAsync(asOf, ct);

    /// <summary>Every kind of location, by name.</summary>
    public Task<IReadOnlyDictionary<string, LocationKind>> ReadKindsAsync(CancellationToken ct) => layouts.ReadKindsAsync(ct);

    /// <summary>Observes aircraft; those that were none at the moment are left out.</summary>
    /// <param name="fleet">What is known besides, at the moment.</param>
    /// <param name="kinds">Every kind of location, by name.</param>
    /// <param name="states">The aircraft.</param>
    /// <param name="keep">Whether to keep what had to be observed.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<AircraftObservations>> ReadAsync(
        FleetHistory fleet, IReadOnlyDictionary<string, LocationKind> kinds, IReadOnlyList<AircraftState> states, bool keep, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(fleet);
        ArgumentNullException.ThrowIfNull(states);
        var bytes = Bytes(kinds);
        var found = new List<AircraftObservations>(states.Count);
        foreach (var some in states.Where(s => s.IsKept).Chunk(AircraftAtOnce))
        {
            var kept = await observed.ReadAsync([.. some.Select(s => s.AircraftId)], ct);
            found.AddRange(kept.Values.OfType<byte[]>().Select(bytes.Read));
        }

        foreach (var some in states.Where(s => !s.IsKept).Chunk(AircraftAtOnce))
        {
            var history = await histories.ReadAircraftAsync(fleet, [.. some.SelectMany(s => s.SharesSerialNumbersWith.Prepend(s.AircraftId)).Distinct()], ct);
            var wanted = some.Select(s => s.Registration).ToHashSet(StringComparer.Ordinal);
            var fresh = Observe.Aircraft(history, wanted.Contains);
            found.AddRange(fresh);
            if (!keep)
                continue;
            var byMark = fresh.ToDictionary(o => o.Registration, StringComparer.Ordinal);
            await observed.KeepAsync(
                fleet.AsOf, Code,
                [.. some.Select(s => byMark.TryGetValue(s.Registration, out var o)
                    ? (s.AircraftId, o.NextDate, bytes.Write(o)) : (s.AircraftId, (DateOnly?)null, null))],
                ct);
        }

        return found;
    }

    /// <summary>Made anew only where a kind was added or changed, since making it costs as much as observing some aircraft.</summary>
    private KeptObservations Bytes(IReadOnlyDictionary<string, LocationKind> kinds)
    {
        if (made is { } last && last.Kinds.Count == kinds.Count && kinds.All(k => last.Kinds.TryGetValue(k.Key, out var known) && known.Equals(k.Value)))
            return last.Bytes;
        var bytes = new KeptObservations(kinds);
        made = new MadeFor(kinds, bytes);
        return bytes;
    }

    private sealed record MadeFor(IReadOnlyDictionary<string, LocationKind> Kinds, KeptObservations Bytes);
}
