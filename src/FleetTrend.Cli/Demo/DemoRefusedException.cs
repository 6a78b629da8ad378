namespace FleetTrend.Cli.Demo;

/// <summary>The demo cannot run as things stand; the message says what to do.</summary>
internal sealed class DemoRefusedException(string message) : Exception(message);
