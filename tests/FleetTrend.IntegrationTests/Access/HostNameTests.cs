using System.Net;
using System.Net.Http.Headers;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>By which names the API may be called. A page of another site whose name was pointed at this machine asks by that name.</summary>
[Collection(SharedPostgres.Name)]
public sealed class HostNameTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer demo = null!;

    public async Task InitializeAsync() => demo = await ApiServer.StartAsync(postgres, settings => settings with
    {
        DemoDirector = true,
        PublicUrl = "https://trend.example.org:5080",
        AllowedHosts = ["alias.example.org", "*.shop.example"],
    });

    public async Task DisposeAsync() => await demo.DisposeAsync();

    [Theory]
    [InlineData("/")]
    [InlineData("/v1/flags")]
    [InlineData("/site.css")]
    [InlineData("/health/ready")]
    public async Task A_page_that_was_rebound_to_this_machine_reads_nothing_not_even_of_the_open_demo(string path)
    {
        foreach (var host in new[] { "elsewhere.example", "elsewhere.example:5080", "localhost.elsewhere.example", "shop.example", "shop.example.elsewhere.example" })
        {
            using var answer = await GetAsync(path, host);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            var said = await answer.Content.ReadAsStringAsync();
            Assert.Contains(host.Split(':')[0], said, StringComparison.Ordinal);
            Assert.Contains("HOST_NOT_ALLOWED", said, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("LOCALHOST:5080")]
    [InlineData("127.0.0.1:5080")]
    [InlineData("[::1]:5080")]
    [InlineData("192.0.2.7")] // an address is what it says: no name was rebound
    [InlineData("trend.example.org")]
    [InlineData("alias.example.org.")]
    [InlineData("east.shop.example:5080")]
    public async Task It_answers_to_addresses_to_localhost_to_its_public_name_and_to_those_that_are_configured(string host)
    {
        using var answer = await GetAsync("/", host);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task A_call_over_gRPC_by_another_name_is_told_so_with_a_status()
    {
        using var http = new HttpClient { BaseAddress = demo.GrpcAddress };
        using var call = new HttpRequestMessage(HttpMethod.Post, "/fleettrend.v1.AccessService/GetOwnKey")
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Headers = { Host = "elsewhere.example" },
            Content = new ByteArrayContent([0, 0, 0, 0, 0]) { Headers = { ContentType = new MediaTypeHeaderValue("application/grpc") } },
        };
        using var answer = await http.SendAsync(call);
        Assert.Equal("7", Assert.Single(answer.Headers.GetValues("grpc-status"))); // PERMISSION_DENIED
    }

    private async Task<HttpResponseMessage> GetAsync(string path, string host)
    {
        using var http = new HttpClient { BaseAddress = demo.HttpAddress };
        using var request = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { Host = host } };
        return await http.SendAsync(request);
    }
}
