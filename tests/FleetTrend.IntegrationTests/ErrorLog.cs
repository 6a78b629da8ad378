using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace FleetTrend.IntegrationTests;

/// <summary>Keeps what a server logs as an error.</summary>
internal sealed class ErrorLog : ILoggerProvider
{
    private readonly ConcurrentQueue<string> messages = new();

    public IReadOnlyCollection<string> Messages => messages;

    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, messages);

    public void Dispose()
    {
    }

    private sealed class Logger(string category, ConcurrentQueue<string> messages) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Error;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (IsEnabled(logLevel))
                messages.Enqueue($"{category}: {formatter(state, exception)} {exception}");
        }
    }
}
