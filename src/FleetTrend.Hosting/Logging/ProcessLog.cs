using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Configuration.Memory;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;

namespace FleetTrend.Hosting.Logging;

/// <summary>The log of a process: one line per event on standard output, with the time in UTC (ISO 8601), the level, the category, the event
/// number and a sentence. Libraries speak from warnings on: what they say of a call or a job tick, our own lines say better.</summary>
public static class ProcessLog
{
    private const string Section = "Logging";

    /// <summary>A logger factory for what comes before a host.</summary>
    /// <param name="settings">Validated settings.</param>
    public static ILoggerFactory Open(HostSettings settings) => LoggerFactory.Create(logging => logging
        .AddConfiguration(new ConfigurationBuilder().Add(Levels(settings)).AddEnvironmentVariables().Build().GetSection(Section))
        .AddLines());

    /// <summary>Makes this the log of a host. Levels of its configuration (<c>Logging:LogLevel:CATEGORY</c>) come before ours.</summary>
    internal static void UseIn(IConfigurationManager configuration, ILoggingBuilder logging, HostSettings settings)
    {
        configuration.Sources.Insert(0, Levels(settings));
        logging.ClearProviders().AddLines();
    }

    private static ILoggingBuilder AddLines(this ILoggingBuilder logging) => logging.AddSimpleConsole(line =>
    {
        line.SingleLine = true;
        line.UseUtcTimestamp = true;
        line.TimestampFormat = "yyyy-MM-ddTHH:mm:ss.fffZ ";
        line.ColorBehavior = LoggerColorBehavior.Disabled;
    });

    private static MemoryConfigurationSource Levels(HostSettings settings) => new()
    {
        InitialData = new Dictionary<string, string?>(StringComparer.Ordinal)
        {
            [$"{Section}:LogLevel:Default"] = nameof(LogLevel.Warning),
            [$"{Section}:LogLevel:FleetTrend"] = settings.LogLevel.ToString(),

            // A failed command is an exception and logged as one; the first start asks for a table that is not there yet.
            [$"{Section}:LogLevel:Microsoft.EntityFrameworkCore.Database.Command"] = nameof(LogLevel.Critical),

            // That the keys of the cookies are not encrypted in their folder: it is open to its owner alone.
            [$"{Section}:LogLevel:Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager"] = nameof(LogLevel.Error),
        },
    };
}
