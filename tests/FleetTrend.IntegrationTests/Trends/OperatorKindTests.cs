using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Refreshes;
using FleetTrend.Worker.Reports;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>A kind of location that no release of ours knows goes in over the API and comes out in rates, lives and report.</summary>
[Collection(SharedPostgres.Name)]
public sealed class OperatorKindTests(PostgresFixture postgres)
{
    private const string Kind = "oil-cooler-fitting";

    // Six fittings, new at 0 h, looked at every 100 h to 500 h; at 300 h three leak and are replaced. By hand: 3 leaks in
    // 6 x 500 h are 1 per 1,000 h; 6 first lives and 3 after them, of which 3 failed; no crack in 3,000 h has the upper
    // limit -ln(0.025) / 3 = 1.2296 per 1,000 h (Garwood 1936, two-sided 95 %).
    [Fact]
    public async Task Comes_out_in_rates_lives_checks_and_report()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await server.Layouts.CreateLocationKindAsync(new CreateLocationKindRequest { LocationKind = Fitting() });
        var fleet = new UnitFleet("cooled", Kind, "ZZ", hoursPerDay: 5);
        var units = Enumerable.Range(0, 6).Select(_ => fleet.Unit()).ToList();
        foreach (var (index, unit) in units.Index())
        {
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
        await RefuseAConditionThatMakesNoSenseThereAsync(server, units[0]);
        var refresh = ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services);
        await refresh.RunAsync(default);

        var rates = (await server.Trends.ListRatesAsync(new ListRatesRequest { TypeGroup = "cooled" })).Rates.Where(r => r.Kind == Kind && r.Location == "").ToList();
        Assert.Equal(1.0, rates.Single(r => r.Condition == Condition.LeakTrace).Rate_.Value, 9);
        var cracks = rates.Single(r => r.Condition == Condition.Crack).Rate_;
        Assert.Equal((0, 1.2296), (cracks.EventCount, Math.Round(cracks.Upper, 4)));
        var life = (await server.Trends.ListPartLivesAsync(new ListPartLivesRequest { Kind = Kind })).PartLives.Single(l => l.Base == "");
        Assert.Equal((9, 3), (life.LifeCount, life.FailureCount));

        await ActivatorUtilities.CreateInstance<ReportWriter>(server.Services, refresh)
            .WriteAsync(new ReportPeriod(new DateOnly(2026, 11, 16), new DateOnly(2026, 11, 22)), default);
        var report = (await server.Reports.ListReportsAsync(new ListReportsRequest())).Reports.Single(r => r.Base == "*");
        var whole = (await server.Reports.GetReportAsync(new GetReportRequest { ReportId = report.ReportId })).Report;
        Assert.Contains("fitting of the oil cooler", whole.WholeText, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("fitting of the oil cooler", await server.Http.GetStringAsync($"/reports/{report.ReportId}"), StringComparison.OrdinalIgnoreCase);
    }

    private static async Task RefuseAConditionThatMakesNoSenseThereAsync(ApiServer server, string unit)
    {
        var wear = new Record
        {
            Key = new RecordKey { Source = "published", SourceRecordId = "wear", Revision = 1 },
            Finding = new Finding
            {
                Registration = unit,
                Location = UnitFleet.Location,
                FoundDate = ShopCards.ToWire(new DateOnly(2010, 4, 1)),
                TimeInServiceHours = 400,
                Condition = Condition.Wear,
            },
        };
        var intake = await server.IntakeOfAsync("published");
        var outcome = (await intake.PushRecordsAsync(new PushRecordsRequest { Records = { wear } })).Outcomes.Single();
        Assert.Equal(RecordState.Refused, outcome.State);
        Assert.Equal((int)StatusCode.InvalidArgument, outcome.Error.Code);
    }

    private static LocationKind Fitting() => new()
    {
        Name = Kind,
        Title = "Fitting of the oil cooler",
        LookFor = "Oil below the fitting or along the hose.",
        JascCode = "7921",
        Conditions = { "CONDITION_LEAK_TRACE", "CONDITION_CRACK", "CONDITION_LOOSENESS" },
        FailureConditions = { "CONDITION_LEAK_TRACE", "CONDITION_CRACK" },
        WatchedConditions = { "CONDITION_CRACK" },
        Checks = { new ConditionChecks { Condition = "CONDITION_LEAK_TRACE", Lines = { "Seat and thread, with the fitting apart." } } },
        BaseChecks = { "Torque of the fitting at this base." },
    };
}
