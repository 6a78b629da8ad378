using System.Text.Json;
using FleetTrend.Cli.Commands;

namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>What a test gives the import besides its folder.</summary>
internal sealed record Given(string Key, string Source = "", bool ValidateOnly = false, bool Hold = false);

/// <summary>The import command as the shell would run it, in this process.</summary>
internal static class ImportRunner
{
    /// <summary>Exit code, the JSON summary (undefined where there is none), and the error stream.</summary>
    public static async Task<(int Code, JsonElement Summary, string Error)> ImportAsync(ApiServer server, string folder, Given given)
    {
        var keyFile = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(keyFile, given.Key + "\n");
            using var output = new StringWriter();
            using var error = new StringWriter();
            var settings = new ImportCommand.Settings
            {
                Folder = folder,
                Server = server.GrpcAddress.ToString(),
                KeyFile = keyFile,
                Source = given.Source,
                ValidateOnly = given.ValidateOnly,
                Hold = given.Hold,
                Json = true,
            };
            var code = await ImportCommand.RunAsync(settings, output, error, CancellationToken.None);
            var text = output.ToString();
            return (code, text.Length > 0 ? JsonDocument.Parse(text).RootElement : default, error.ToString());
        }
        finally
        {
            File.Delete(keyFile);
        }
    }
}
