using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store;
using FleetTrend.Store.Layouts;
using Grpc.Core;

namespace FleetTrend.Api.Layouts;

/// <summary>Location kinds, layouts and type groups.</summary>
internal sealed class LayoutGrpcService(LayoutStore layouts) : LayoutService.LayoutServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<CreateLayoutResponse> CreateLayout(CreateLayoutRequest request, ServerCallContext context)
    {
        var kinds = await layouts.ReadKindsAsync(context.CancellationToken);
        var layout = LayoutRules.Parse(request.Layout, kinds, out var refusals);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var result = request.ValidateOnly
            ? await layouts.CheckLayoutAsync(layout, context.CancellationToken)
            : await layouts.AddLayoutAsync(layout, context.CancellationToken);
        return result.IsStored
            ? new CreateLayoutResponse { Layout = layout.ToWire() }
            : throw Explain(result, "layout.name", layout.Name).ToException();
    }

    /// <inheritdoc/>
    public override async Task<GetLayoutResponse> GetLayout(GetLayoutRequest request, ServerCallContext context)
    {
        var layout = await layouts.GetAsync(request.Name, context.CancellationToken)
            ?? throw new Refusal("name", request.Name, Reasons.LayoutNotFound, "must be the name of a layout").ToException();
        return new GetLayoutResponse { Layout = layout.ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<ListLayoutsResponse> ListLayouts(ListLayoutsRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => layouts.ListAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListLayoutsResponse { Layouts = { page.Items.Select(l => l.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<CreateLocationKindResponse> CreateLocationKind(CreateLocationKindRequest request, ServerCallContext context)
    {
        var kind = LayoutRules.Parse(request.LocationKind, out var refusals);
        if (kind is null)
            throw refusals.ToException();
        var result = request.ValidateOnly
            ? await layouts.CheckKindAsync(kind, context.CancellationToken)
            : await layouts.AddKindAsync(kind, context.CancellationToken);
        return result.IsStored
            ? new CreateLocationKindResponse { LocationKind = kind.ToWire() }
            : throw Explain(result, "location_kind.name", kind.Name).ToException();
    }

    /// <inheritdoc/>
    public override async Task<ListLocationKindsResponse> ListLocationKinds(ListLocationKindsRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => layouts.ListKindsAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListLocationKindsResponse { Kinds = { page.Items.Select(k => k.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<CreateTypeGroupResponse> CreateTypeGroup(CreateTypeGroupRequest request, ServerCallContext context)
    {
        var group = LayoutRules.Parse(request.TypeGroup, out var refusals);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var result = request.ValidateOnly
            ? await layouts.CheckTypeGroupAsync(group, context.CancellationToken)
            : await layouts.AddTypeGroupAsync(group, context.CancellationToken);
        return result.IsStored
            ? new CreateTypeGroupResponse { TypeGroup = group.ToWire() }
            : throw Explain(result, "type_group.name", group.Name).ToException();
    }

    /// <inheritdoc/>
    public override async Task<ListTypeGroupsResponse> ListTypeGroups(ListTypeGroupsRequest request, ServerCallContext context)
    {
        var page = await Paging.ReadAsync(request.PageToken, () => layouts.ListTypeGroupsAsync(
            Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListTypeGroupsResponse { TypeGroups = { page.Items.Select(g => g.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    private static Refusal Explain(AddResult result, string nameField, string name) => result.State switch
    {
        AddState.NameInUse => new(nameField, name, Reasons.NameInUse, "must be a name that is free, or the very same content again"),
        AddState.PathHasOtherKind => new(
            "layout.locations", result.Value ?? "", Reasons.PathHasOtherKind, $"must be a path of that kind: in another layout this one has kind '{result.Stored}'"),
        AddState.LayoutUnknown => new("type_group.layout", result.Value ?? "", Reasons.LayoutNotRegistered, "must be the name of a layout"),
        _ => throw new ArgumentOutOfRangeException(nameof(result), result, "Not a refusal."),
    };
}
