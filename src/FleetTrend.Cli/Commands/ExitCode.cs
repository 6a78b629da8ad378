namespace FleetTrend.Cli.Commands;

/// <summary>What the command tells the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>It ran, and something did not come out as it should.</summary>
    public const int Failed = 1;

    /// <summary>Input or settings were refused; nothing was done.</summary>
    public const int BadInput = 2;
}
