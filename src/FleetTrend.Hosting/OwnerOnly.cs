namespace FleetTrend.Hosting;

/// <summary>Files and folders that nobody but their owner can read.</summary>
public static class OwnerOnly
{
    /// <summary>Makes a folder with those above it. One that is there already keeps its rights: it may be anybody's.</summary>
    public static void CreateFolder(string path)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(path);
        else
            Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>Makes a file to write, in place of one that is there: a new file gets its rights before it gets its content.</summary>
    public static FileStream CreateFile(string path)
    {
        File.Delete(path);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }
}
