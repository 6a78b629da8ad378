using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Sources;
using FleetTrend.Synthetic;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.PostgresBenchmarks.Fleets;

/// <summary>Intake in this process: the rules and the writer of the API, without the wire.</summary>
internal sealed class DirectIntake(BenchmarkDatabase database) : IAsyncDisposable
{
    private const int Writers = 4;
    private static readonly PushTerms Terms = new(SyntheticOperator.SourceName);

    private readonly ServiceProvider services = new ServiceCollection()
        .AddFleetTrendStore(database.ConnectionString)
        .AddSingleton(TimeProvider.System)
        .AddSingleton<ReleaseSignal>()
        .AddSingleton<RecordIntake>()
        .BuildServiceProvider();

    /// <summary>Makes the schema and registers what the records refer to.</summary>
    public async Task PrepareAsync(SyntheticOperator fleet)
    {
        await StoreSchema.MigrateAsync(services, default);
        await services.GetRequiredService<SourceStore>().AddAsync(fleet.Source.Name, fleet.Source.Title, default);
        var layouts = services.GetRequiredService<LayoutStore>();
        foreach (var group in fleet.TypeGroups)
            await layouts.AddTypeGroupAsync(new(group.Name, group.Title, group.Layout), default);
    }

    /// <summary>A key of every scope for the fleet's source.</summary>
    public async Task<string> MakeKeyAsync()
    {
        var keys = services.GetRequiredService<KeyStore>();
        return (await keys.AddAsync("benchmark", SyntheticOperator.SourceName, Enum.GetValues<KeyScope>(), default))!.Text;
    }

    /// <summary>Pushes records that hold all they refer to, those of the aircraft first.</summary>
    public async Task PushAllAsync(IEnumerable<Record> records)
    {
        using var remaining = records.Chunk(RecordIntake.MaxRecords).GetEnumerator();
        while (remaining.MoveNext())
        {
            await PushAsync(remaining.Current);
            if (remaining.Current.Any(r => r.Aircraft is null))
                break; // all aircraft are registered: what follows may come in any order
        }

        await Parallel.ForEachAsync(
            Rest(remaining),
            new ParallelOptions { MaxDegreeOfParallelism = Writers },
            async (batch, _) => await PushAsync(batch));
    }

    /// <summary>Pushes up to 1,000 records.</summary>
    /// <exception cref="InvalidOperationException">One is not accepted.</exception>
    public async Task PushAsync(IReadOnlyList<Record> records)
    {
        var outcomes = await services.GetRequiredService<RecordIntake>().PushAsync(records, Terms, default);
        if (outcomes.FirstOrDefault(o => o.State != RecordState.Accepted) is { } other)
            throw new InvalidOperationException($"Not accepted: {other}");
    }

    public ValueTask DisposeAsync() => services.DisposeAsync();

    private static IEnumerable<Record[]> Rest(IEnumerator<Record[]> batches)
    {
        while (batches.MoveNext())
            yield return batches.Current;
    }
}
