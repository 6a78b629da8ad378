using System.IO.Compression;
using FleetTrend.Api.Access;
using FleetTrend.Api.Codes;
using FleetTrend.Api.DataProblems;
using FleetTrend.Api.Flags;
using FleetTrend.Api.Intake;
using FleetTrend.Api.Json;
using FleetTrend.Api.Layouts;
using FleetTrend.Api.Pages;
using FleetTrend.Api.Pages.BackTests;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.Pages.Parts;
using FleetTrend.Api.Parameters;
using FleetTrend.Api.People;
using FleetTrend.Api.Records;
using FleetTrend.Api.Reports;
using FleetTrend.Api.Schedules;
using FleetTrend.Api.Sources;
using FleetTrend.Api.Trends;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Results;
using FleetTrend.Store;
using Grpc.Net.Compression;
using Grpc.Reflection;

namespace FleetTrend.Api;

/// <summary>The API: gRPC, the same calls as JSON over HTTP, health, and pages.</summary>
public static class ApiHost
{
    /// <summary>Most bytes of one request message; a larger one is refused with MESSAGE_TOO_LARGE.</summary>
    public const int MaxMessageBytes = 4 * 1024 * 1024;

    /// <summary>Builds the host; the caller runs it after <see cref="PrepareAsync"/>, and disposes <paramref name="database"/> after it.</summary>
    /// <param name="args">Command line, for ASP.NET Core's own settings.</param>
    /// <param name="settings">Validated settings.</param>
    /// <param name="database">The database, shared by all hosts of a process.</param>
    /// <param name="configure">What a caller adds or replaces before the host is built: tests, a log of their own.</param>
    public static WebApplication Build(
        string[] args, HostSettings settings, HostDatabase database, Action<WebApplicationBuilder>? configure = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            // The pages are found in this assembly, whichever program builds the host.
            ApplicationName = typeof(ApiHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.ListenAsApi(settings);
        builder.AddFleetTrendHosting(settings, database, "fleettrend-api");
        builder.Services.AddFleetTrendStore();
        builder.Services.AddFleetTrendResults();
        builder.Services.AddSingleton<RecordIntake>();
        builder.Services.AddSingleton<HeldRecordIntake>();
        builder.Services.AddSingleton<ReleaseSignal>();
        builder.Services.AddHostedService<HeldRecordRelease>();
        AddCalls(builder.Services);
        builder.Services.AddAccess();
        builder.Services.AddPageAccess(settings);
        builder.Services.AddPeople(settings);
        builder.Services.AddRazorPages().AddMvcOptions(mvc => mvc.Filters.Add(new FormTooOldFilter()));
        AddGrpc(builder.Services);
        configure?.Invoke(builder);

        var app = builder.Build();
        if (settings.Tls is null)
        {
            foreach (var address in new[] { settings.GrpcAddress, settings.HttpAddress }.Where(a => !a.IsLoopback))
                ApiLog.PlainText(app.Logger, address);
        }

        AnswerCalls(app, settings);
        return app;
    }

    private static void AnswerCalls(WebApplication app, HostSettings settings)
    {
        app.UseProxyHeaders(settings);
        app.UseMiddleware<HostCheck>();
        app.UseRouting(); // else the framework puts it, and who calls, before everything
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseMalformedMessageAnswers();
        app.UseMiddleware<KeyBeforeBody>();
        app.UseStrictJson();
        app.MapFleetTrendHealth();
        app.MapFleetTrendGrpcHealth();
        app.MapGrpcReflectionService();
        app.MapGrpcService<AccessGrpcService>();
        app.MapGrpcService<IntakeGrpcService>();
        app.MapGrpcService<CodeGrpcService>();
        app.MapGrpcService<RecordGrpcService>();
        app.MapGrpcService<LayoutGrpcService>();
        app.MapGrpcService<SourceGrpcService>();
        app.MapGrpcService<TrendGrpcService>();
        app.MapGrpcService<ParameterGrpcService>();
        app.MapGrpcService<FlagGrpcService>();
        app.MapGrpcService<DataProblemGrpcService>();
        app.MapGrpcService<ReportGrpcService>();
        app.MapGrpcService<ScheduleGrpcService>();
        app.MapReportPages();
        app.MapPartLifePlots();
        app.MapTraceFiles();
        app.MapAuthorityDraftFiles();
    }

    /// <summary>Brings the schema up to date, and makes the first key and the link for the first administrator where there is none; several
    /// processes may do so at once.</summary>
    public static async Task PrepareAsync(WebApplication app, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(app);
        await StoreSchema.MigrateAsync(app.Services, ct);
        await FirstKey.MakeAsync(app.Services, ct);
        await FirstSignIn.OfferAsync(app.Services, ct);
    }

    /// <summary>What calls and pages ask.</summary>
    private static void AddCalls(IServiceCollection services) => services
        .AddSingleton<FlagAnswers>()
        .AddSingleton<DataProblemAnswers>()
        .AddSingleton<CodeAnswers>()
        .AddSingleton<ParameterAnswers>()
        .AddSingleton<NameFilters>()
        .AddSingleton<BackTestReader>()
        .AddSingleton<TrendReader>()
        .AddSingleton<EvidenceReader>()
        .AddSingleton<ReportReproduction>()
        .AddSingleton<ScheduleAnswers>()
        .AddSingleton<ReportPreviews>()
        .AddSingleton<FaultAnswers>();

    private static void AddGrpc(IServiceCollection services)
    {
        services
            .AddGrpc(grpc =>
            {
                // Twice the announced limit: what lies between is refused by us, with details; beyond it by the framework.
                grpc.MaxReceiveMessageSize = BodyLimits.MostMessageBytes;
                grpc.CompressionProviders =
                [
                    new BoundedCompression(new GzipCompressionProvider(CompressionLevel.Fastest)),
                    new BoundedCompression(new DeflateCompressionProvider(CompressionLevel.Fastest)),
                ];
                grpc.Interceptors.Add<FaultInterceptor>();
                grpc.Interceptors.Add<AccessInterceptor>();
            })
            // Without a registry of the detail types, a rich error over JSON is an empty 500.
            .AddJsonTranscoding(json => json.TypeRegistry = StatusAnswers.DetailTypes)
            .AddServiceOptions<ReflectionServiceImpl>(grpc => grpc.MaxReceiveMessageSize = BodyLimits.MostOpenMessageBytes)
            .AddServiceOptions<ReflectionV1ServiceImpl>(grpc => grpc.MaxReceiveMessageSize = BodyLimits.MostOpenMessageBytes);
        services.AddGrpcReflection();
        services.AddFleetTrendGrpcHealth();
    }
}
