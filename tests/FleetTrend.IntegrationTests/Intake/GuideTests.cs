using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>What protos/README.md shows works as it stands there.</summary>
[Collection(SharedPostgres.Name)]
public sealed class GuideTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "README.md"));

    private ApiServer _server = null!;

    public async Task InitializeAsync() => _server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await _server.DisposeAsync();

    [Fact]
    public async Task Every_curl_command_of_its_chapter_is_accepted()
    {
        var chapter = Guide[Guide.IndexOf("## With curl", StringComparison.Ordinal)..];
        var commands = Regex.Matches(
            chapter, @"^curl -sS -H ""authorization: Bearer \$KEY"" http://127\.0\.0\.1:5080(?<path>/\S+) --json '(?<body>.*?)'$",
            RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.NonBacktracking);
        Assert.Equal(4, commands.Count);
        foreach (Match command in commands)
        {
            using var content = new StringContent(command.Groups["body"].Value, Encoding.UTF8, "application/json");
            using var response = await _server.Http.PostAsync(command.Groups["path"].Value, content);
            var body = await response.Content.ReadAsStringAsync();
            Assert.True(response.StatusCode == HttpStatusCode.OK && !body.Contains("REFUSED"), body);
        }
    }

    [Fact] // .ci/examples runs the program itself.
    public void What_the_guide_shows_of_the_example_in_csharp_stands_there()
    {
        var shown = Regex.Match(Guide, @"```csharp\n(?<code>.*?)```", RegexOptions.Singleline | RegexOptions.NonBacktracking);
        Assert.Contains(shown.Groups["code"].Value, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "push.cs")));
    }

    [Fact]
    public void Every_proto_is_explained() => Assert.All(
        Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "guide", "protos")),
        file => Assert.Contains($"`{Path.GetFileName(file)}`", Guide));
}
