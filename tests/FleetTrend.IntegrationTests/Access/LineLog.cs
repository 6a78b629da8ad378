using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>Keeps every line that a server logs, at every level, with all that belongs to it.</summary>
internal sealed class LineLog : ILoggerProvider
{
    private readonly ConcurrentQueue<string> lines = new();

    public IReadOnlyCollection<string> Lines => lines;

    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, lines);

    public void Dispose()
    {
    }

    private sealed class Logger(string category, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull
        {
            lines.Enqueue($"{category} scope {Whole(state)}");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            lines.Enqueue($"{logLevel} {category} {eventId.Id}: {formatter(state, exception)} {Whole(state)} {exception}");

        private static string Whole<TState>(TState state) =>
            state is IEnumerable<KeyValuePair<string, object?>> fields ? string.Join(' ', fields.Select(f => $"{f.Key}={f.Value}")) : $"{state}";
    }
}
