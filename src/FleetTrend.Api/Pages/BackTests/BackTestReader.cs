using FleetTrend.Results.Observing;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends.BackTests;

namespace FleetTrend.Api.Pages.BackTests;

/// <summary>Back-tests as of the newest published moment: each computed when it is first asked for, one at a time, and kept until the next moment.</summary>
internal sealed class BackTestReader(TypeGroupReader typeGroups) : IDisposable
{
    /// <summary>With more, the replay takes longer than a page can wait.</summary>
    public const int MostAircraft = 200;

    private readonly SemaphoreSlim oneAtATime = new(1);
    private readonly Dictionary<string, BackTest> kept = new(StringComparer.Ordinal);
    private DateTimeOffset keptAsOf;

    /// <summary>Every type group with aircraft, and how many.</summary>
    public Task<IReadOnlyList<(string Name, int Aircraft)>> ReadSizesAsync(PublishedTrends trends, CancellationToken ct) =>
        typeGroups.ReadSizesAsync(trends.AsOf, ct);

    /// <summary>The back-test of a type group that is there, with at most <see cref="MostAircraft"/> aircraft; without the single calls of the alert levels.</summary>
    public async Task<BackTest> ReadAsync(PublishedTrends trends, string typeGroup, CancellationToken ct)
    {
        await oneAtATime.WaitAsync(ct);
        try
        {
            if (keptAsOf != trends.AsOf)
                kept.Clear();
            keptAsOf = trends.AsOf;
            if (kept.TryGetValue(typeGroup, out var known))
                return known;
            var inputs = await typeGroups.ReadAsync(trends.AsOf, typeGroup, ResultReader.ParametersOf(trends), keep: false, ct);
            return kept[typeGroup] = BackTestReplay.Run(inputs, keepAlertCalls: false);
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => oneAtATime.Dispose();
}
