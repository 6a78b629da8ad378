using System.Net.Http.Headers;
using FleetTrend.Contracts.V1;
using Grpc.Net.Client;

namespace FleetTrend.Cli.Demo;

/// <summary>Keys of the demo, made as an operator would make them: the first key makes one for the source and one for reading.</summary>
internal sealed class DemoKeys : IDisposable
{
    private readonly string url;

    private DemoKeys(string url, string firstKey)
    {
        this.url = url;
        Administering = ChannelWith(firstKey);
    }

    /// <summary>For what administers: sources, type groups, recipients, requests.</summary>
    public GrpcChannel Administering { get; }

    /// <summary>For what reads trends, flags and reports.</summary>
    public GrpcChannel Reading { get; private set; } = null!;

    /// <summary>The key of <see cref="Reading"/>, to be shown: the data are synthetic and the server listens on this machine only.</summary>
    public string ReadingKey { get; private set; } = "";

    /// <summary>Begins with the key in the file that the server wrote, and makes those that are shown.</summary>
    public static async Task<DemoKeys> StartAsync(string url, string firstKeyFile, CancellationToken ct)
    {
        var keys = new DemoKeys(url, (await File.ReadAllTextAsync(firstKeyFile, ct)).Trim());
        keys.ReadingKey = await keys.CreateAsync(new CreateKeyRequest { Name = "reader of the demo", Scopes = { Scope.TrendsRead } }, ct);
        keys.Reading = keys.ChannelWith(keys.ReadingKey);
        return keys;
    }

    /// <summary>Registers a source; a channel with a key of its own. The caller disposes it.</summary>
    public async Task<GrpcChannel> PushingAsync(Source source, CancellationToken ct)
    {
        await new SourceService.SourceServiceClient(Administering).CreateSourceAsync(new CreateSourceRequest { Source = source }, cancellationToken: ct);
        var request = new CreateKeyRequest { Name = $"source of the demo: {source.Name}", Source = source.Name, Scopes = { Scope.RecordsWrite } };
        return ChannelWith(await CreateAsync(request, ct));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Administering.Dispose();
        Reading?.Dispose();
    }

    private async Task<string> CreateAsync(CreateKeyRequest request, CancellationToken ct) =>
        (await new AccessService.AccessServiceClient(Administering).CreateKeyAsync(request, cancellationToken: ct)).KeyText;

    private GrpcChannel ChannelWith(string key)
    {
        var http = new HttpClient();
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return GrpcChannel.ForAddress(url, new GrpcChannelOptions { HttpClient = http, DisposeHttpClient = true });
    }
}
