using FleetTrend.Observations;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Forecasts;
using FleetTrend.Store.Observed;
using FleetTrend.Trends;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Results.Observing;

/// <summary>What the analyses of a type group may know, as known at a moment.</summary>
public sealed class TypeGroupReader(AircraftObserver observer, ForecastStore forecasts, FlagStore flags)
{
    // The score goes back three years; the forecasts before it are not read.
    private const int ForecastYears = 4;

    /// <summary>Every type group with an aircraft in it, now or once, by name; and how many it has or had.</summary>
    public async Task<IReadOnlyList<(string Name, int Aircraft)>> ReadSizesAsync(DateTimeOffset asOf, CancellationToken ct) =>
    [
        .. (await observer.ReadStatesAsync(asOf, null, ct)).SelectMany(s => s.TypeGroups).CountBy(g => g, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Value)),
    ];

    /// <summary>Reads one.</summary>
    /// <param name="asOf">The moment, which is fixed.</param>
    /// <param name="typeGroup">Its name.</param>
    /// <param name="chosen">The choices.</param>
    /// <param name="keep">Whether to keep what had to be observed.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<TypeGroupInputs> ReadAsync(DateTimeOffset asOf, string typeGroup, TrendParameters chosen, bool keep, CancellationToken ct)
    {
        var fleet = await observer.ReadFleetAsync(asOf, ct);
        var states = await observer.ReadStatesAsync(asOf, null, ct);
        List<AircraftState> members = [.. states.Where(s => s.TypeGroups.Contains(typeGroup, StringComparer.Ordinal))];
        var aircraft = await observer.ReadAsync(fleet, await observer.ReadKindsAsync(ct), members, keep, ct);
        // What was published on the day of the moment has nothing to be held against, and a set that holds all day must not depend on it.
        var day = new DateTimeOffset(asOf.UtcDateTime.Date, TimeSpan.Zero);
        var kept = await forecasts.ReadAsync(typeGroup, asOf.AddYears(-ForecastYears), day, ct);
        return new TypeGroupInputs(typeGroup, aircraft.Where(a => a.TypeGroups.Contains(typeGroup, StringComparer.Ordinal)), asOf, chosen)
        {
            FlagClosings = fleet.FlagClosings,
            PracticeChanges = Observe.ObservePracticeChanges(fleet.PracticeChanges),
            StockCounts = Observe.ObserveStockCounts(fleet.StockCounts, asOf),
            Forecasts = KeptForecasts.Read([.. kept.Select(k => (k.Analysis, k.AsOf, k.DetailJson))]),
            FlagSteps = await flags.ReadStepsAsync(typeGroup, day, ct),
            TypeGroupCount = states.SelectMany(s => s.TypeGroups).Distinct(StringComparer.Ordinal).Count(),
        };
    }
}
