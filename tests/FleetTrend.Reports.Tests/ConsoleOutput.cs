using System.Runtime.InteropServices;

namespace FleetTrend.Reports.Tests;

/// <summary>What the process prints, native libraries included: they write to the file descriptors, past <see cref="Console"/>.</summary>
internal static partial class ConsoleOutput
{
    private const int WriteAndCreate = 0x1 | 0x40; // O_WRONLY | O_CREAT of Linux

    /// <summary>Runs, and gives back all that was written to standard output and standard error meanwhile.</summary>
    public static string During(Action run)
    {
        var path = Path.GetTempFileName();
        try
        {
            var file = Open(path, WriteAndCreate, 0);
            var (output, error) = (Duplicate(1), Duplicate(2));
            _ = Duplicate(file, 1);
            _ = Duplicate(file, 2);
            try
            {
                run();
                _ = Flush(IntPtr.Zero);
            }
            finally
            {
                _ = Duplicate(output, 1);
                _ = Duplicate(error, 2);
                foreach (var descriptor in new[] { output, error, file })
                    _ = Close(descriptor);
            }

            return File.ReadAllText(path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags, int mode);

    [LibraryImport("libc", EntryPoint = "dup")]
    private static partial int Duplicate(int descriptor);

    [LibraryImport("libc", EntryPoint = "dup2")]
    private static partial int Duplicate(int descriptor, int onto);

    [LibraryImport("libc", EntryPoint = "fflush")]
    private static partial int Flush(IntPtr everyStream);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int Close(int descriptor);
}
