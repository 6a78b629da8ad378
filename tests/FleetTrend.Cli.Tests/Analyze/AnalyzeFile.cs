using System.Text.Json;
using FleetTrend.Cli.Commands;

namespace FleetTrend.Cli.Tests.Analyze;

/// <summary>A file in a folder of its own, and what the commands say about it.</summary>
internal sealed class AnalyzeFile : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("analyze").FullName;

    public AnalyzeFile(string text)
    {
        Path = System.IO.Path.Combine(folder, "rows.csv");
        File.WriteAllText(Path, text);
    }

    public string Path { get; }

    public string Beside(string name) => System.IO.Path.Combine(folder, name);

    public (int Code, string Output, string Error) Run(string kind, bool json = false, string? plot = null, double confidence = 0.95)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var settings = new AnalyzeSettings { File = Path, Json = json, Plot = plot, Confidence = confidence };
        var code = kind switch
        {
            "life" => AnalyzeLifeCommand.Run(settings, output, error),
            "growth" => AnalyzeGrowthCommand.Run(settings, output, error),
            "recurrence" => AnalyzeRecurrenceCommand.Run(settings, output, error),
            _ => AnalyzeRateCommand.Run(settings, output, error),
        };
        return (code, output.ToString(), error.ToString());
    }

    /// <summary>The JSON of a run that must succeed.</summary>
    public JsonElement Json(string kind)
    {
        var (code, output, error) = Run(kind, json: true);
        Assert.Equal("", error);
        Assert.Equal(0, code);
        using var document = JsonDocument.Parse(output);
        return document.RootElement.Clone();
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
