using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>What protos/README.md shows works as it stands there.</summary>
[Collection(SharedPostgres.Name)]
public sealed class GuideTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "README.md"));

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact] // The chapter "With curl" first: it makes what the commands of the other chapters ask about.
    public async Task Every_curl_command_is_accepted()
    {
        var chapter = Guide.IndexOf("## With curl", StringComparison.Ordinal);
        var commands = Regex.Matches(
            Guide,
            @"^curl -sS -H ""authorization: Bearer \$KEY""( -X (?<verb>[A-Z]+))? '?http://127\.0\.0\.1:5080(?<path>/[^\s']+)'?( --json '(?<body>[^']*)')?$",
            RegexOptions.Multiline | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking);
        Assert.Equal(Regex.Count(Guide, "^curl ", RegexOptions.Multiline), commands.Count);
        Assert.Equal(4, commands.Count(c => c.Index > chapter));
        foreach (var command in commands.Where(c => c.Index > chapter))
            await AcceptedAsync(command);

        var tablet = ShopCards.Finding("f-204", location: "exhaust/cyl-3/flange-weld");
        tablet.Key.Source = "tablet";
        await (await server.IntakeOfAsync("tablet")).PushRecordAsync(new PushRecordRequest { Record = tablet });
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default); // before it nothing is checked
        foreach (var command in commands.Where(c => c.Index < chapter))
            await AcceptedAsync(command);
    }

    private async Task AcceptedAsync(Match command)
    {
        var (verb, sent) = (command.Groups["verb"].Value, command.Groups["body"]);
        using var request = new HttpRequestMessage(
            verb.Length > 0 ? new HttpMethod(verb) : sent.Success ? HttpMethod.Post : HttpMethod.Get, command.Groups["path"].Value);
        if (sent.Success)
            request.Content = new StringContent(sent.Value, Encoding.UTF8, "application/json");
        using var response = await server.Http.SendAsync(request);
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.StatusCode == HttpStatusCode.OK && !body.Contains("REFUSED"), $"{command.Value}: {body}");
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
