namespace FleetTrend.Cli;

/// <summary>What the command tells the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>It ran, and something did not come out as it should: a record was refused, say.</summary>
    public const int Failed = 1;

    /// <summary>Usage, input or settings were refused; nothing was done.</summary>
    public const int BadInput = 2;

    /// <summary>The server was not reached, or did not stay; what it acknowledged is stored.</summary>
    public const int NotReached = 3;

    /// <summary>The server does not take the key, or the key may not do this.</summary>
    public const int NotAllowed = 4;
}
