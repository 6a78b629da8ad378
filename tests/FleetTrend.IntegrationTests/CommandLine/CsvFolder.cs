namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>A folder of CSV files for one test.</summary>
internal sealed class CsvFolder : IDisposable
{
    private readonly string temporary = Directory.CreateTempSubdirectory("csv").FullName;

    /// <summary>The files of protos/examples/csv.</summary>
    public static CsvFolder Example()
    {
        var folder = new CsvFolder();
        foreach (var file in Directory.EnumerateFiles(System.IO.Path.Combine(AppContext.BaseDirectory, "guide", "csv")))
            File.Copy(file, folder.PathTo(System.IO.Path.GetFileName(file)));
        return folder;
    }

    public string Path => temporary;

    public string PathTo(string name) => System.IO.Path.Combine(temporary, name);

    public void Write(string name, params string[] lines) => File.WriteAllText(PathTo(name), string.Concat(lines.Select(l => l + "\n")));

    public void Replace(string name, string from, string to)
    {
        var text = File.ReadAllText(PathTo(name));
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(PathTo(name), text.Replace(from, to, StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(temporary, recursive: true);
}
