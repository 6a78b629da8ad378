using FleetTrend.Observations;
using FleetTrend.Store.Histories;

namespace FleetTrend.Api.Trends;

/// <summary>The fleet as the refresh observes it, for the rows behind its numbers. The moment asked for last is kept: its next page, and the
/// next aircraft, cost no reading.</summary>
internal sealed class EvidenceReader(HistoryReader histories) : IDisposable
{
    private readonly SemaphoreSlim _oneAtATime = new(1);
    private volatile FleetObservations? _kept;

    /// <summary>The fleet as known at a moment that <see cref="Knowledge.FixAsOfAsync"/> has fixed, or at one before it.</summary>
    public async Task<FleetObservations> ReadAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        if (_kept is { } kept && kept.AsOf == asOf)
            return kept;
        await _oneAtATime.WaitAsync(ct);
        try
        {
            if (_kept is not { } other || other.AsOf != asOf)
                _kept = Observe.Fleet(await histories.ReadAsync(asOf, ct));
            return _kept;
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _oneAtATime.Dispose();
}
