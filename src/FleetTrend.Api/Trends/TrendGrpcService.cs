using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Scores;
using Grpc.Core;

namespace FleetTrend.Api.Trends;

/// <summary>What the fleet is doing, from the latest refresh.</summary>
internal sealed partial class TrendGrpcService(
    TrendReader trends,
    NameFilters filters,
    LookListReader lookLists,
    SilentSourceReader silentSources,
    AuthorityDraftReader drafts,
    EvidenceReader evidence,
    Knowledge knowledge,
    RefreshRequests refreshes)
    : TrendService.TrendServiceBase
{
    /// <inheritdoc/>
    public override async Task<RequestRefreshResponse> RequestRefresh(RequestRefreshRequest request, ServerCallContext context)
    {
        var asked = await refreshes.RequestAsync(write: !request.ValidateOnly, context.CancellationToken);
        return new RequestRefreshResponse
        {
            RequestTime = request.ValidateOnly ? null : asked.RequestTime.ToWire(),
            State = (RefreshRequestState)asked.State,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListRatesResponse> ListRates(ListRatesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Rates,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Location = Asked(request.Location) },
            request.Condition == Condition.Unspecified ? null : rates => rates.Where(r => (int)request.Condition == (int)r.Condition),
            context.CancellationToken);
        return new ListRatesResponse
        {
            Rates = { page.Items.Select(r => r.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListPartLivesResponse> ListPartLives(ListPartLivesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.PartLives,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Kind = Asked(request.Kind) },
            arrange: null,
            context.CancellationToken);
        return new ListPartLivesResponse
        {
            PartLives = { page.Items.Select(l => l.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListRecurrencesResponse> ListRecurrences(ListRecurrencesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Recurrences,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Location = Asked(request.Location) },
            arrange: null,
            context.CancellationToken);
        return new ListRecurrencesResponse
        {
            Recurrences = { page.Items.Select(r => r.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListLevelsResponse> ListLevels(ListLevelsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Levels,
            new ResultFilter
            {
                TypeGroup = Asked(request.TypeGroup),
                Registration = Asked(request.Registration.ToUpperInvariant()),
                Location = Asked(request.Location),
            },
            Analyses.Levels.Order,
            context.CancellationToken);
        return new ListLevelsResponse
        {
            Levels = { page.Items.Select(l => l.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListOpenFindingsResponse> ListOpenFindings(ListOpenFindingsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.OpenFindings,
            new ResultFilter
            {
                TypeGroup = Asked(request.TypeGroup),
                Registration = Asked(request.Registration.ToUpperInvariant()),
                Location = Asked(request.Location),
                Kind = Asked(request.Kind),
            },
            open => Analyses.OpenFindings.Order(open.Where(f => request.Condition == Condition.Unspecified || (int)request.Condition == (int)f.Condition)),
            context.CancellationToken);
        return new ListOpenFindingsResponse
        {
            OpenFindings = { page.Items.Select(f => f.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListSilencesResponse> ListSilences(ListSilencesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Silence,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Registration = Asked(request.Registration.ToUpperInvariant()) },
            Analyses.Silence.Order,
            context.CancellationToken);
        var sources = request is { Registration: "", TypeGroup: "" }
            ? await silentSources.ReadAsync(page.Origin.AsOfTime.ToDateTimeOffset(), context.CancellationToken)
            : [];
        return new ListSilencesResponse
        {
            Silences = { page.Items.Select(s => s.ToWire()) },
            SilentSources = { sources.Select(s => s.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListDueLooksResponse> ListDueLooks(ListDueLooksRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.DueLooks,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Registration = Asked(request.Registration.ToUpperInvariant()) },
            due => Analyses.DueLooks.Order(due.Where(d => !request.OverdueOnly || d.IsOverdue)),
            context.CancellationToken);
        return new ListDueLooksResponse
        {
            DueLooks = { page.Items.Select(d => d.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListFailureChancesResponse> ListFailureChances(ListFailureChancesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.FailureChances,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Registration = Asked(request.Registration.ToUpperInvariant()) },
            Analyses.FailureChances.Order,
            context.CancellationToken);
        return new ListFailureChancesResponse
        {
            FailureChances = { page.Items.Select(c => c.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
            OffStatements = { await trends.OffAsync(page.Origin, ScoreWords.ChancesOff, context.CancellationToken) },
        };
    }

    /// <inheritdoc/>
    public override async Task<ListSparesResponse> ListSpares(ListSparesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Spares,
            new ResultFilter(),
            needs => Analyses.Spares.Order(needs.Where(n => request.Base is "" or "*" || n.Base == request.Base)),
            context.CancellationToken);
        return new ListSparesResponse
        {
            Spares = { page.Items.Select(s => s.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
            OffStatements = { await trends.OffAsync(page.Origin, ScoreWords.SparesOff, context.CancellationToken) },
        };
    }

    /// <inheritdoc/>
    public override async Task<ListChanceCalibrationsResponse> ListChanceCalibrations(ListChanceCalibrationsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.ChanceCalibrations, new ResultFilter { TypeGroup = Asked(request.TypeGroup) },
            arrange: null, context.CancellationToken);
        return new ListChanceCalibrationsResponse
        {
            ChanceCalibrations = { page.Items.Select(c => c.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListRepairsResponse> ListRepairs(ListRepairsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.Repairs, new ResultFilter { TypeGroup = Asked(request.TypeGroup), Kind = Asked(request.Kind) },
            Analyses.Repairs.Order, context.CancellationToken);
        return new ListRepairsResponse
        {
            Repairs = { page.Items.Select(r => r.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListLeakErosionsResponse> ListLeakErosions(ListLeakErosionsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.LeakErosions, new ResultFilter { TypeGroup = Asked(request.TypeGroup) },
            arrange: null, context.CancellationToken);
        return new ListLeakErosionsResponse
        {
            LeakErosions = { page.Items.Select(e => e.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListRenewalAgesResponse> ListRenewalAges(ListRenewalAgesRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.RenewalAges, new ResultFilter { TypeGroup = Asked(request.TypeGroup), Kind = Asked(request.Kind) },
            Analyses.RenewalAges.Order, context.CancellationToken);
        return new ListRenewalAgesResponse
        {
            RenewalAges = { page.Items.Select(a => a.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListScoresResponse> ListScores(ListScoresRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Scores,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup) },
            Analyses.Scores.Order,
            context.CancellationToken);
        return new ListScoresResponse
        {
            Scores = { page.Items.Select(s => s.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListGrowthResponse> ListGrowth(ListGrowthRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request), Analyses.Growth, new ResultFilter { TypeGroup = Asked(request.TypeGroup), Kind = Asked(request.Kind) },
            Analyses.Growth.Order, context.CancellationToken);
        return new ListGrowthResponse
        {
            Growth = { page.Items.Select(g => g.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListEffectsResponse> ListEffects(ListEffectsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Effects,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Registration = Asked(request.Registration.ToUpperInvariant()) },
            Analyses.Effects.Order,
            context.CancellationToken);
        return new ListEffectsResponse
        {
            Effects = { page.Items.Select(e => e.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListQuietResponse> ListQuiet(ListQuietRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = await trends.PageAsync(
            AsOfPageRequest.Read(request),
            Analyses.Quiet,
            new ResultFilter { TypeGroup = Asked(request.TypeGroup), Registration = Asked(request.Registration.ToUpperInvariant()) },
            quiet => Analyses.Quiet.Order(quiet.Where(q => request.IncludeOrdinary || q.IsAsked)),
            context.CancellationToken);
        return new ListQuietResponse
        {
            Quiet = { page.Items.Select(q => q.ToWire()) },
            NextPageToken = page.NextPageToken,
            Origin = page.Origin,
            Freshness = page.Freshness,
        };
    }

    /// <inheritdoc/>
    public override async Task<ListEvidenceResponse> ListEvidence(ListEvidenceRequest request, ServerCallContext context)
    {
        const int DefaultSize = 100;
        var page = AsOfPageRequest.Read(request, DefaultSize);
        if (request.Registration.Length == 0 && request.TypeGroup.Length == 0)
            throw new Refusal("registration", "", Reasons.FieldRequired, "must be given where type_group is not").ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var asOf = await MomentAsync(request, page, context.CancellationToken);
        var aircraft = await evidence.ReadAsync(request, asOf, context.CancellationToken);
        var rows = EvidenceMessages.Rows(aircraft, request).Skip((int)page.After).Take(page.Size + 1).ToList();
        return new ListEvidenceResponse
        {
            Rows = { rows.Take(page.Size) },
            NextPageToken = rows.Count > page.Size ? page.NextToken(asOf, page.After + page.Size) : "",
            AsOfTime = asOf.ToWire(),
            Freshness = await trends.FreshnessAsync(asOf, context.CancellationToken),
        };
    }

    private async Task<DateTimeOffset> MomentAsync(ListEvidenceRequest request, AsOfPageRequest page, CancellationToken ct)
    {
        if (page.AsOf is { } moment)
            return moment;
        // A moment of the caller's own is fixed first, so that no record in flight slips in between two pages.
        return request.AsOfTime is null
            ? (await trends.ReadAsync(null, ct)).AsOf
            : WireDates.ReadMoment("as_of_time", request.AsOfTime, await knowledge.FixAsOfAsync(ct))!.Value;
    }

    private static string? Asked(string filter) => filter.Length == 0 ? null : filter;
}
