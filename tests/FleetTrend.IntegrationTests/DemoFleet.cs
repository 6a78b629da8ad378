using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using FleetTrend.Synthetic;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests;

/// <summary>The demo's fleet as of today, pushed as the demo pushes it.</summary>
internal static class DemoFleet
{
    public static async Task<SyntheticFleet> PushAsync(ApiServer server)
    {
        await server.Services.GetRequiredService<SourceStore>().AddAsync(SyntheticSchool.SourceName, "Synthetic", default);
        var key = await server.CreateKeyAsync(SyntheticSchool.SourceName, Enum.GetValues<KeyScope>());
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.GrpcAddress, Key = key });
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(
            1, DateOnly.FromDateTime(DateTime.UtcNow), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });
        await foreach (var pushed in new RecordPusher(channel).PushAsync(fleet.Records.ToAsyncEnumerable()))
            Assert.True(pushed.Outcome.State == RecordState.Accepted, pushed.Outcome.Error?.Message);
        return fleet;
    }
}
