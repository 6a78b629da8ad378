using FleetTrend.Store.Codes;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Forecasts;
using FleetTrend.Store.HeldRecords;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Observed;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Parameters;
using FleetTrend.Store.People;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Store.Retention;
using FleetTrend.Store.Schedules;
using FleetTrend.Store.Sources;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetTrend.Store;

/// <summary>Puts the store into a host.</summary>
public static class StoreRegistration
{
    /// <summary>Adds the store on a data source of its own, named <c>fleettrend</c> so that metrics carry no password.</summary>
    public static IServiceCollection AddFleetTrendStore(this IServiceCollection services, string connectionString) =>
        services
            .AddSingleton(_ => new NpgsqlDataSourceBuilder(connectionString) { Name = "fleettrend" }.Build())
            .AddFleetTrendStore();

    /// <summary>Adds the store on the <see cref="NpgsqlDataSource"/> that the host has registered.</summary>
    public static IServiceCollection AddFleetTrendStore(this IServiceCollection services) =>
        services
            .AddPooledDbContextFactory<FleetDbContext>((provider, options) => options
                .UseNpgsql(provider.GetRequiredService<NpgsqlDataSource>())
                .UseSnakeCaseNamingConvention())
            .AddSingleton<RecordWriter>()
            .AddSingleton<AcceptedRecords>()
            .AddSingleton<CodeStore>()
            .AddSingleton<HeldRecordStore>()
            .AddSingleton<Knowledge>()
            .AddSingleton<HistoryReader>()
            .AddSingleton<StoredRecords>()
            .AddSingleton<LayoutStore>()
            .AddSingleton<SourceStore>()
            .AddSingleton<FleetDirectory>()
            .AddSingleton<FleetNames>()
            .AddSingleton<ResultStore>()
            .AddSingleton<ForecastStore>()
            .AddSingleton<StartedRefreshes>()
            .AddSingleton<ObservedStore>()
            .AddSingleton<FreshnessReader>()
            .AddSingleton<FlagStore>()
            .AddSingleton<DataProblemStore>()
            .AddSingleton<FindingMergeStore>()
            .AddSingleton<ParameterStore>()
            .AddSingleton<ReportStore>()
            .AddSingleton<OutboxStore>()
            .AddSingleton<OldRows>()
            .AddSingleton<RefreshRequests>()
            .AddSingleton<ReportRequests>()
            .AddSingleton<ScheduleStore>()
            .AddSingleton<DueSchedules>()
            .AddSingleton<KeyStore>()
            .AddSingleton<PageSessions>()
            .AddSingleton<FirstLinks>()
            .AddSingleton<JobLock>();
}
