namespace FleetTrend.Hosting;

/// <summary>What a host tells the service manager when it ends; deploy/README.md lists them.</summary>
public static class HostExitCode
{
    /// <summary>It was asked to stop.</summary>
    public const int Stopped = 0;

    /// <summary>A setting breaks its rule, or an address is in use.</summary>
    public const int SettingsRefused = 2;

    /// <summary>The database did not answer, refused, or could not be started.</summary>
    public const int DatabaseNotReached = 3;
}
