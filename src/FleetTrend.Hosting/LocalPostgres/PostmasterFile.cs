using System.Globalization;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>What a server wrote into its cluster's <c>postmaster.pid</c>.
/// Source: PostgreSQL, src/include/utils/pidfile.h: line 1 pid, 4 port, 8 status.</summary>
internal sealed record PostmasterFile(int ProcessId, int Port, string Status)
{
    /// <summary>Above every process id that Linux hands out (PID_MAX_LIMIT is 4194304, exclusive).</summary>
    private const string NobodysProcessId = "4194304";

    public bool IsReady => Status == "ready";

    /// <summary>Reads the file of <paramref name="cluster"/>; null when there is none or it is still being written.</summary>
    public static PostmasterFile? Read(string cluster)
    {
        string[] lines;
        try
        {
            lines = File.ReadAllLines(PathIn(cluster));
        }
        catch (IOException)
        {
            return null; // absent, or removed between two looks
        }
        return lines.Length >= 4 && TryInt(lines[0], out var pid) && TryInt(lines[3], out var port)
            ? new PostmasterFile(pid, port, lines.Length >= 8 ? lines[7].Trim() : "starting")
            : null;
    }

    /// <summary>Whether the process named in the file is alive and serves <paramref name="cluster"/>. A process id
    /// alone proves nothing: after a reboot it may be anybody's.</summary>
    public bool IsServing(string cluster)
    {
        try
        {
            var command = File.ReadAllText($"/proc/{ProcessId}/cmdline").Split('\0');
            return command[0].EndsWith("postgres", StringComparison.Ordinal) && command.Contains(cluster);
        }
        catch (IOException)
        {
            return false; // no such process
        }
        catch (UnauthorizedAccessException)
        {
            return false; // another user's process, so not our server
        }
    }

    /// <summary>Whether any process has the id in the file.</summary>
    public bool IsSomeProcess => Directory.Exists($"/proc/{ProcessId}");

    /// <summary>Replaces the process id by one that nobody has. A server refuses to start while the id is alive, even
    /// when it is another program's by now. The file is kept because the server checks by its shared memory key
    /// that no orphaned session is still writing to the cluster.</summary>
    public static void Disown(string cluster)
    {
        var lines = File.ReadAllLines(PathIn(cluster));
        lines[0] = NobodysProcessId;
        File.WriteAllLines(PathIn(cluster), lines);
    }

    private static string PathIn(string cluster) => Path.Combine(cluster, "postmaster.pid");

    private static bool TryInt(string text, out int value) =>
        int.TryParse(text.AsSpan().Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out value);
}
