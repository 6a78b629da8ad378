using System.Net;
using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Reflection.V1Alpha;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Health, reflection, and what a caller learns when the database is gone.</summary>
[Collection(SharedPostgres.Name)]
public sealed class HostTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Health_answers_over_HTTP_and_gRPC()
    {
        Assert.Equal(HttpStatusCode.OK, (await server.Http.GetAsync("health/live")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await server.Http.GetAsync("health/ready")).StatusCode);
        var health = await new Health.HealthClient(server.Channel).CheckAsync(new HealthCheckRequest());
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, health.Status);
    }

    [Fact]
    public async Task Reflection_lists_every_service_of_the_contract()
    {
        using var call = new ServerReflection.ServerReflectionClient(server.Channel).ServerReflectionInfo();
        await call.RequestStream.WriteAsync(new ServerReflectionRequest { ListServices = "" });
        Assert.True(await call.ResponseStream.MoveNext(CancellationToken.None));
        var names = call.ResponseStream.Current.ListServicesResponse.Service.Select(s => s.Name).ToList();
        await call.RequestStream.CompleteAsync();

        Assert.All(
            ["Intake", "Layout", "Source", "Trend", "Flag", "Report"],
            name => Assert.Contains($"fleettrend.v1.{name}Service", names));
    }

    [Fact]
    public async Task Every_call_of_the_contract_is_there()
    {
        foreach (var service in new[]
        {
            IntakeService.Descriptor, LayoutService.Descriptor, SourceService.Descriptor, TrendService.Descriptor, FlagService.Descriptor,
            ReportService.Descriptor,
        })
        {
            foreach (var method in service.Methods.Where(m => !m.IsClientStreaming))
            {
                var bytes = Marshallers.Create<byte[]>(b => b, b => b);
                var call = server.Channel.CreateCallInvoker().AsyncUnaryCall(
                    new Method<byte[], byte[]>(MethodType.Unary, service.FullName, method.Name, bytes, bytes), null, default, []);
                var code = await CodeAsync(call);
                Assert.True(code is not (StatusCode.Unimplemented or StatusCode.Internal or StatusCode.Unknown), $"{method.FullName}: {code}");
            }
        }
    }

    [Fact]
    public async Task Without_its_database_the_API_is_unavailable_and_says_to_send_again()
    {
        await postgres.ExecuteAsync($"ALTER DATABASE {server.Database.Name} ALLOW_CONNECTIONS false");
        await postgres.ExecuteAsync(
            $"SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '{server.Database.Name}'");

        var refusal = await Assert.ThrowsAsync<RpcException>(
            () => server.Sources.ListSourcesAsync(new ListSourcesRequest()).ResponseAsync);

        Assert.Equal(StatusCode.Unavailable, refusal.StatusCode);
        var status = refusal.GetRpcStatus()!;
        Assert.Equal("DATABASE_UNAVAILABLE", status.GetDetail<ErrorInfo>()!.Reason);
        Assert.NotNull(status.GetDetail<RetryInfo>());
        Assert.DoesNotContain(server.Database.Name, refusal.Status.Detail); // nothing of the inside
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await server.Http.GetAsync("health/ready")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await server.Http.GetAsync("health/live")).StatusCode);
        server.ErrorsExpected = true; // the health check reports it as an error
    }

    private static async Task<StatusCode> CodeAsync(AsyncUnaryCall<byte[]> call)
    {
        try
        {
            await call.ResponseAsync;
            return StatusCode.OK;
        }
        catch (RpcException refusal)
        {
            return refusal.StatusCode;
        }
    }
}
