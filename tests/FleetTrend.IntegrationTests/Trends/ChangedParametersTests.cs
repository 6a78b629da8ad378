using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Parameters;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Refreshes;
using FleetTrend.Trends;
using FleetTrend.Worker.Reports;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;
using Condition = FleetTrend.Contracts.V1.Condition;
using Figure = FleetTrend.Contracts.V1.Figure;
using LookInterval = FleetTrend.Contracts.V1.LookInterval;
using MakerLimit = FleetTrend.Contracts.V1.MakerLimit;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>A person changes what the trends are computed with: the next results use it, those of an earlier moment do not, and every change
/// reads back.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ChangedParametersTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string TypeGroup = "set";
    private const string Kind = "gasket";

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    // Six gaskets, new at 0 h, looked at every 100 h to 500 h; at 300 h three leak and are replaced. By hand: 3 leaks in 6 x 500 h, each aircraft 0.6
    // away from what the others give, 6 x 0.36 / 3² = 0.24. Student's t of 5 degrees is 2.5706 at 95 % and 1.4759 at 80 % (Abramowitz and Stegun
    // 1964, table 26.10): upper limits of exp(2.5706 x 0.4899) = 3.523 and exp(1.4759 x 0.4899) = 2.061 times the rate. Nothing failed in its first
    // 100 h; in its first 300 h something did.
    [Fact]
    public async Task The_next_results_use_them_and_an_earlier_report_is_made_again_with_its_own()
    {
        await PushFleetAsync();
        await WriteReportAsync(new DateOnly(2026, 11, 9));
        var (rate, early) = await ResultsAsync();
        Assert.Equal((0.95, 3.523), (rate.Confidence, Math.Round(rate.Upper, 3)));
        Assert.Equal(0.6, rate.Dispersion, 1e-9); // each of the six 0.5 away from 0.5: 6 x 0.5 / 5
        Assert.False(early.HasValue);
        Assert.Equal(0, (await OriginAsync()).Revision);

        var changed = Shipped();
        (changed.Parameters.Confidence, changed.Note) = (0.8, "the director reads ranges at 80 %");
        await server.Parameters.ChangeParametersAsync(changed);
        Assert.True((await server.Trends.ListRatesAsync(new ListRatesRequest())).Freshness.RefreshPending);
        Assert.Equal(0.95, (await ResultsAsync()).Rate.Confidence); // not before the refresh
        await WriteReportAsync(new DateOnly(2026, 11, 16));
        (rate, early) = await ResultsAsync();
        Assert.Equal((0.8, 2.061), (rate.Confidence, Math.Round(rate.Upper, 3)));
        Assert.False(early.HasValue);

        (changed.Revision, changed.Note) = (1, "gaskets of the set are looked at every 300 h");
        changed.Parameters.LookIntervals.Add(new LookInterval { TypeGroup = TypeGroup, Kind = Kind, Hours = 300 });
        await server.Parameters.ChangeParametersAsync(changed);
        await WriteReportAsync(new DateOnly(2026, 11, 23));
        early = (await ResultsAsync()).Early;
        Assert.True(early.HasValue && early.Value > 0, $"{early}");
        var origin = await OriginAsync();
        Assert.Equal((2, 0.8, 300.0), (origin.Revision, origin.Confidence, origin.LookIntervalHoursOf(TypeGroup, Kind)));

        var reports = (await server.Reports.ListReportsAsync(new ListReportsRequest { Base = "*" })).Reports;
        Assert.Equal(3, reports.Count);
        foreach (var report in reports)
        {
            var again = await server.Reports.ReproduceReportAsync(new ReproduceReportRequest { ReportId = report.ReportId });
            Assert.True(again.Same, again.Difference);
        }

        var history = (await server.Parameters.ListParameterRevisionsAsync(new ListParameterRevisionsRequest())).Revisions;
        Assert.Equal([(2, 0.8, 1), (1, 0.8, 0)], history.Select(r => (r.Revision, r.Parameters.Confidence, r.Parameters.LookIntervals.Count)));
        Assert.All(history, r => Assert.Equal("of a test", r.ChangedBy)); // the name of the key
        Assert.Equal("the director reads ranges at 80 %", history[1].Note);
        Assert.Equal(history[0], (await server.Parameters.GetParametersAsync(new GetParametersRequest())).Parameters);
    }

    [Fact]
    public async Task As_shipped_they_are_revision_0_and_the_numbers_of_the_trends()
    {
        var shipped = (await server.Parameters.GetParametersAsync(new GetParametersRequest())).Parameters;
        Assert.Equal((0, "", "", null), (shipped.Revision, shipped.ChangedBy, shipped.Note, shipped.ChangeTime));
        Assert.Equal(Shipped().Parameters, shipped.Parameters);
        Assert.Empty((await server.Parameters.ListParameterRevisionsAsync(new ListParameterRevisionsRequest())).Revisions);
    }

    [Fact] // A number that stands in one of the three and not in the others would be lost, or could not be changed.
    public void Contract_trends_and_list_have_the_same_parameters()
    {
        var contract = FleetTrend.Contracts.V1.Parameters.Descriptor.Fields.InDeclarationOrder();
        using var trends = JsonDocument.Parse(new TrendParameters().ToJson());
        Assert.Equal(trends.RootElement.EnumerateObject().Select(p => p.Name), contract.Select(f => f.JsonName));
        Assert.Equal(ParameterNumbers.All.Select(n => n.Field), contract.Where(f => !f.IsRepeated).Select(f => f.Name));
        var interval = JsonSerializer.SerializeToElement(new FleetTrend.Trends.LookInterval("a", "b", 1), TrendJson.Options);
        Assert.Equal(interval.EnumerateObject().Select(p => p.Name), LookInterval.Descriptor.Fields.InDeclarationOrder().Select(f => f.JsonName));
        var limit = JsonSerializer.SerializeToElement(new FleetTrend.Trends.MakerLimit("a", "b", 1, 1), TrendJson.Options);
        Assert.Equal(limit.EnumerateObject().Select(p => p.Name), MakerLimit.Descriptor.Fields.InDeclarationOrder().Select(f => f.JsonName));
        Assert.All(ParameterNumbers.All, n => Assert.InRange(n.In(Shipped().Parameters)!.Value, n.Least, n.Most));
    }

    [Fact]
    public async Task A_change_of_what_somebody_else_has_changed_meanwhile_is_refused_and_the_same_again_is_none()
    {
        var mine = Shipped();
        mine.Parameters.Confidence = 0.9;
        var theirs = Shipped();
        theirs.Parameters.Confidence = 0.99;
        var stored = (await server.Parameters.ChangeParametersAsync(theirs)).Parameters;
        var refused = await Assert.ThrowsAsync<RpcException>(() => server.Parameters.ChangeParametersAsync(mine).ResponseAsync);
        Assert.Equal((StatusCode.Aborted, "PARAMETERS_CHANGED"), (refused.StatusCode, refused.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason));
        Assert.Equal("revision: must be the revision that is in force, 1; got 0", refused.GetRpcStatus()!.Message);
        using (var json = await server.Http.PostAsync(
            "/v1/parameters:change", new StringContent(Google.Protobuf.JsonFormatter.Default.Format(mine), System.Text.Encoding.UTF8, "application/json")))
        {
            Assert.Equal(System.Net.HttpStatusCode.Conflict, json.StatusCode);
        }

        Assert.Equal(stored, (await server.Parameters.ChangeParametersAsync(theirs)).Parameters); // its answer may have been lost
        Assert.Equal(1, await server.CountAsync("parameter_revisions"));
    }

    [Fact]
    public async Task What_is_only_checked_is_not_written()
    {
        var request = Shipped();
        (request.ValidateOnly, request.Parameters.MinimumFailuresForFit) = (true, 9);
        var answer = (await server.Parameters.ChangeParametersAsync(request)).Parameters;
        Assert.Equal((1, 9, null), (answer.Revision, answer.Parameters.MinimumFailuresForFit, answer.ChangeTime));
        Assert.Equal(0, await server.CountAsync("parameter_revisions"));
    }

    private static ChangeParametersRequest Shipped() => new()
    {
        Revision = 0,
        Note = "tried out",
        Parameters = new()
        {
            Confidence = 0.95,
            FalseDiscoveryRate = 0.05,
            FlagsPer50AircraftYears = 1,
            WatchesPer50AircraftYears = 5,
            MinimumFailuresForFit = 3,
            LookIntervalHours = 100,
            SpareServiceLevel = 0.95,
            SpareFirstHorizonDays = 30,
            SpareSecondHorizonDays = 90,
            SpareThirdHorizonDays = 180,
            FailureCostRatio = 5,
            UndetectedFailureChance = 0.05,
        },
    };

    private async Task PushFleetAsync()
    {
        var fleet = new UnitFleet(TypeGroup, Kind, "ZZ", hoursPerDay: 5);
        foreach (var index in Enumerable.Range(0, 6))
        {
            var unit = fleet.Unit();
            for (var hours = 100; hours <= 500; hours += 100)
            {
                fleet.Looked(unit, hours);
                if (hours != 300 || index >= 3)
                    continue;
                fleet.Found(unit, hours, Condition.LeakTrace);
                fleet.Done(unit, hours, ActionKind.Replaced);
            }
        }

        await fleet.PushAsync(server);
    }

    /// <summary>The report of a week, on trends of now.</summary>
    private Task WriteReportAsync(DateOnly monday) => ActivatorUtilities
        .CreateInstance<ReportWriter>(server.Services, ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services))
        .WriteAsync(new ReportPeriod(monday, monday.AddDays(6)), default);

    private async Task<(Figure Rate, Figure Early)> ResultsAsync()
    {
        var rates = (await server.Trends.ListRatesAsync(new ListRatesRequest { TypeGroup = TypeGroup })).Rates;
        var life = (await server.Trends.ListPartLivesAsync(new ListPartLivesRequest { Kind = Kind })).PartLives.Single(l => l.Base == "");
        return (rates.Single(r => r.Kind == Kind && r.Location == "" && r.Condition == Condition.LeakTrace).Rate_, life.EarlyFailures);
    }

    /// <summary>What the latest results say that they used.</summary>
    private async Task<TrendParameters> OriginAsync() => JsonSerializer.Deserialize<TrendParameters>(
        (await server.Trends.ListRatesAsync(new ListRatesRequest())).Origin.ParametersJson, TrendJson.Options)!;
}
