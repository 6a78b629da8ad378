using FleetTrend.Cli.RecordFiles;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Cli.Import;

/// <summary>
/// Registers what records refer to by name: sources, layouts, type groups. What is there already in the same form is left
/// alone, so that a key that may not register can import the same folder again.
/// </summary>
internal sealed class Registration(ChannelBase channel, bool validateOnly)
{
    private const int PageSize = 500;

    private readonly SourceService.SourceServiceClient sources = new(channel);
    private readonly AccessService.AccessServiceClient access = new(channel);
    private readonly LayoutService.LayoutServiceClient layouts = new(channel);

    /// <summary>Layouts that the server has.</summary>
    public async Task<IReadOnlyList<Layout>> LayoutsAsync(CancellationToken ct) => await PagesAsync<Layout>(async token =>
    {
        var page = await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = PageSize, PageToken = token }, cancellationToken: ct);
        return (page.Layouts, page.NextPageToken);
    });

    /// <summary>Type groups that the server has.</summary>
    public async Task<IReadOnlyList<TypeGroup>> TypeGroupsAsync(CancellationToken ct) => await PagesAsync<TypeGroup>(async token =>
    {
        var page = await layouts.ListTypeGroupsAsync(new ListTypeGroupsRequest { PageSize = PageSize, PageToken = token }, cancellationToken: ct);
        return (page.TypeGroups, page.NextPageToken);
    });

    /// <summary>Sources that the server has; only the key's own, without its title, where the key may not list them.</summary>
    public async Task<IReadOnlyList<Source>> VisibleSourcesAsync(CancellationToken ct)
    {
        try
        {
            return await PagesAsync<Source>(async token =>
            {
                var page = await sources.ListSourcesAsync(new ListSourcesRequest { PageSize = PageSize, PageToken = token }, cancellationToken: ct);
                return (page.Sources, page.NextPageToken);
            });
        }
        catch (RpcException refusal) when (refusal.StatusCode == StatusCode.PermissionDenied)
        {
            return [new Source { Name = await OwnSourceAsync(ct) }];
        }
    }

    /// <summary>The source that the key belongs to; empty where it belongs to none.</summary>
    public async Task<string> OwnSourceAsync(CancellationToken ct) =>
        (await access.GetOwnKeyAsync(new GetOwnKeyRequest(), cancellationToken: ct)).Key.Source;

    /// <summary>Registers one thing of a file. The state is accepted, unchanged, valid, or refused with the error.</summary>
    public async Task<RecordOutcome> RegisterAsync(FileRecord thing, CancellationToken ct)
    {
        try
        {
            var isThere = thing.Message switch
            {
                Source source => (await VisibleSourcesAsync(ct)).Any(s => s.Name == source.Name && (s.CreateTime is null || s.Title == source.Title)),
                Layout layout => (await LayoutsAsync(ct)).Any(l => l.Equals(layout)),
                var group => (await TypeGroupsAsync(ct)).Any(g => g.Equals(group)),
            };
            if (isThere)
                return new RecordOutcome { State = RecordState.Unchanged };
            await CreateAsync(thing, ct);
            return new RecordOutcome { State = validateOnly ? RecordState.Valid : RecordState.Accepted };
        }
        catch (RpcException refusal) when (IsAboutTheThing(refusal))
        {
            var error = refusal.GetRpcStatus() ?? new Google.Rpc.Status { Code = (int)refusal.StatusCode, Message = refusal.Status.Detail };
            return new RecordOutcome { State = RecordState.Refused, Error = error };
        }
    }

    private async Task CreateAsync(FileRecord thing, CancellationToken ct)
    {
        switch (thing.Message)
        {
            case Source source:
                await sources.CreateSourceAsync(new CreateSourceRequest { Source = source, ValidateOnly = validateOnly }, cancellationToken: ct);
                break;
            case Layout layout:
                await layouts.CreateLayoutAsync(new CreateLayoutRequest { Layout = layout, ValidateOnly = validateOnly }, cancellationToken: ct);
                break;
            default:
                await layouts.CreateTypeGroupAsync(
                    new CreateTypeGroupRequest { TypeGroup = (TypeGroup)thing.Message, ValidateOnly = validateOnly }, cancellationToken: ct);
                break;
        }
    }

    private static bool IsAboutTheThing(RpcException refusal) =>
        !CallError.IsTransient(refusal) && refusal.StatusCode is not (StatusCode.Unauthenticated or StatusCode.DeadlineExceeded or StatusCode.Internal);

    private static async Task<IReadOnlyList<T>> PagesAsync<T>(Func<string, Task<(IEnumerable<T> Items, string Next)>> read)
    {
        var all = new List<T>();
        var token = "";
        do
        {
            var (items, next) = await read(token);
            all.AddRange(items);
            token = next;
        }
        while (token.Length > 0);
        return all;
    }
}
