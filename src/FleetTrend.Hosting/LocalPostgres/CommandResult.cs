namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>What a program left behind: its exit code and everything it wrote.</summary>
internal sealed record CommandResult(int ExitCode, string Output);
