using FleetTrend.Results.Forecasts;
using FleetTrend.Results.Observing;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Results.Reporting;
using FleetTrend.Trends;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.Results;

/// <summary>Puts results into a host.</summary>
public static class ResultsRegistration
{
    /// <summary>Adds what computes and reads results, on the store of the host.</summary>
    public static IServiceCollection AddFleetTrendResults(this IServiceCollection services) => services
        .AddSingleton(new AnalysisList(Analyses.All))
        .AddSingleton<AircraftObserver>()
        .AddSingleton<TypeGroupReader>()
        .AddSingleton<ResultReader>()
        .AddSingleton<ForecastKeeper>()
        .AddSingleton<LookListReader>()
        .AddSingleton<SilentSourceReader>()
        .AddSingleton<AuthorityDraftReader>()
        .AddSingleton<TrendRefresh>()
        .AddSingleton<ReportComposer>();
}
