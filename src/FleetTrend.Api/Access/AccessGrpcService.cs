using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Keys;
using Grpc.Core;
using ApiKey = FleetTrend.Contracts.V1.ApiKey;

namespace FleetTrend.Api.Access;

/// <summary>Keys of callers.</summary>
internal sealed class AccessGrpcService(KeyStore store, KnownKeys known, ILogger<AccessGrpcService> log) : AccessService.AccessServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<CreateKeyResponse> CreateKey(CreateKeyRequest request, ServerCallContext context)
    {
        var refusals = KeyRules.Check(request);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var source = request.Source.Length == 0 ? null : request.Source;
        if (request.ValidateOnly)
        {
            return source is null || await store.IsSourceAsync(source, context.CancellationToken)
                ? new CreateKeyResponse { Key = new ApiKey { Name = request.Name, Source = request.Source, Scopes = { request.Scopes.Order() } } }
                : throw NoSuchSource(request.Source);
        }

        var made = await store.AddAsync(
            request.Name, source, [.. request.Scopes.Select(scope => (KeyScope)scope)], context.CancellationToken)
            ?? throw NoSuchSource(request.Source);
        await known.ForgetAsync();
        ApiLog.KeyMade(log, made.Key.Id, Caller.Read(context).LogName);
        return new CreateKeyResponse { Key = made.Key.ToWire(), KeyText = made.Text };
    }

    /// <inheritdoc/>
    public override async Task<ListKeysResponse> ListKeys(ListKeysRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => store.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListKeysResponse { Keys = { page.Items.Select(key => key.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<RevokeKeyResponse> RevokeKey(RevokeKeyRequest request, ServerCallContext context)
    {
        var refusals = KeyRules.Check(request);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var key = await store.RevokeAsync(request.KeyId, write: !request.ValidateOnly, context.CancellationToken)
            ?? throw new Refusal("key_id", request.KeyId, Reasons.KeyNotFound, "must be the identifier of a key").ToException();
        if (request.ValidateOnly)
            return new RevokeKeyResponse { Key = key.ToWire() };
        await known.ForgetAsync();
        ApiLog.KeyRevoked(log, key.Id, Caller.Read(context).LogName);
        return new RevokeKeyResponse { Key = key.ToWire() };
    }

    /// <inheritdoc/>
    public override Task<GetOwnKeyResponse> GetOwnKey(GetOwnKeyRequest request, ServerCallContext context) =>
        Task.FromResult(new GetOwnKeyResponse { Key = Caller.Read(context).Key?.ToWire() ?? throw NoKey() });

    private static RpcException NoKey() =>
        new CallRefusedException(Reasons.KeyRequired, "A person who has signed in has no key.").ToRpcException();

    private static RpcException NoSuchSource(string source) =>
        new Refusal("source", source, Reasons.SourceNotRegistered, "must be a registered source").ToException();
}
