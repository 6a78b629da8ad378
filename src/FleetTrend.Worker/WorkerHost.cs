using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Health;
using FleetTrend.Hosting.Mail;
using FleetTrend.Results;
using FleetTrend.Store;
using FleetTrend.Worker.Jobs;
using FleetTrend.Worker.Mail;
using FleetTrend.Worker.Reports;
using FleetTrend.Worker.Schedules;
using Hangfire;
using Hangfire.PostgreSql;

namespace FleetTrend.Worker;

/// <summary>The worker: Hangfire jobs on PostgreSQL. Several workers share the jobs.</summary>
public static class WorkerHost
{
    private const int JobsAtOnce = 4;

    /// <summary>Builds the host; <see cref="PrepareAsync"/> comes before it is started.</summary>
    /// <param name="args">Command line, for ASP.NET Core's own settings.</param>
    /// <param name="settings">Validated settings.</param>
    /// <param name="database">The database, shared by all hosts of a process.</param>
    public static WebApplication Build(string[] args, HostSettings settings, HostDatabase database)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(database);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.ListenAsWorker(settings);
        builder.AddFleetTrendHosting(settings, database, "fleettrend-worker");
        builder.Services.AddFleetTrendStore();
        builder.Services.AddSingleton<WorkerMetrics>();
        builder.Services.AddFleetTrendResults();
        builder.Services.AddSingleton<ReportWriter>();
        builder.Services.AddSingleton<MailComposer>();
        builder.Services.AddSingleton<IMailSender>(settings.Mail.Smtp is { } smtp
            ? new SmtpMailSender(smtp)
            : new MailFolderSender(settings.Mail));
        AddHangfire(builder.Services, database.ConnectionString);

        var app = builder.Build();
        app.MapFleetTrendHealth();
        return app;
    }

    /// <summary>Brings the schemas up to date and adds the recurring jobs; several workers may do so at once.</summary>
    public static async Task PrepareAsync(WebApplication app, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(app);
        await StoreSchema.MigrateAsync(app.Services, ct);
        await StoreSchema.AloneAsync(
            app.Services,
            () =>
            {
                // Asking for the storage makes its tables.
                app.Services.GetRequiredService<JobStorage>();
                RecurringSchedule.Apply(app.Services.GetRequiredService<IRecurringJobManager>(), app.Services.GetRequiredService<ScheduleSettings>());
                return Task.CompletedTask;
            },
            ct);
    }

    private static void AddHangfire(IServiceCollection services, string connectionString)
    {
        services.AddHangfire(hangfire => hangfire
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings()
            .UsePostgreSqlStorage(
                options => options.UseNpgsqlConnection(connectionString),
                new PostgreSqlStorageOptions
                {
                    // A job keeps itself visible while its worker lives; a killed worker's job is free again after this time.
                    UseSlidingInvisibilityTimeout = true,
                    InvisibilityTimeout = TimeSpan.FromSeconds(30),
                    QueuePollInterval = TimeSpan.FromSeconds(1),
                    EnableLongPolling = true,
                }));
        services.AddHangfireServer(server =>
        {
            server.WorkerCount = JobsAtOnce;
            server.SchedulePollingInterval = TimeSpan.FromSeconds(1);
        });
        services.AddHangfireServer(server =>
        {
            server.ServerName = $"{Environment.MachineName}:{Environment.ProcessId}:{JobNames.TrendQueue}";
            server.Queues = [JobNames.TrendQueue];
            server.WorkerCount = Environment.ProcessorCount;
        });
        services.AddTransient<RefreshTrendsJob>();
        services.AddTransient<RefreshTypeGroupJob>();
        services.AddTransient<WeeklyReportJob>();
        services.AddTransient<RequestedReportsJob>();
        services.AddTransient<SendMailJob>();
        services.AddTransient<RemoveOldRowsJob>();
    }
}
