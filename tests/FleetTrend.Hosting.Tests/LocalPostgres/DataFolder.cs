namespace FleetTrend.Hosting.Tests.LocalPostgres;

/// <summary>A data folder of its own for one test, removed with it.</summary>
public sealed class DataFolder : IDisposable
{
    public DataFolder()
    {
        // Created closed to others by the system's temp call; opened because the server runs under another account
        // when the tests run as root.
        Path = Directory.CreateTempSubdirectory("fleettrend-test-").FullName;
        File.SetUnixFileMode(Path, (UnixFileMode)0b111_101_101);
    }

    public string Path { get; }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
