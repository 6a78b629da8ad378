using System.Diagnostics;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests;
using Grpc.Core;
using Grpc.Net.Client;

namespace FleetTrend.FaultTests;

/// <summary>What the two hosts print, as deploy/README.md promises it: one line per event, in one form, nothing of the libraries.</summary>
[Collection(SharedPostgres.Name)]
public sealed partial class LogTests(PostgresFixture server)
{
    private const int RefusedCalls = 300;
    private const int LoggedPerMinute = 60; // the default of FLEETTREND_REFUSED_CALLS_PER_MINUTE

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    [Fact]
    public async Task Refused_calls_are_one_line_each_up_to_the_limit_and_then_none()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        var api = await product.StartApiAsync();
        using var channel = GrpcChannel.ForAddress(product.GrpcUrl);
        using var http = new HttpClient { BaseAddress = new Uri(product.PagesUrl) };
        var started = Stopwatch.GetTimestamp();
        for (var i = 0; i < RefusedCalls / 3; i++)
            await RefuseAsync(channel, http);
        var minutes = 1 + (int)Stopwatch.GetElapsedTime(started).TotalMinutes; // more than one on a busy machine

        using var allowed = await product.ChannelAsync();
        await new IntakeService.IntakeServiceClient(allowed).PushRecordsAsync(new PushRecordsRequest { Records = { new Contracts.V1.Record() } });
        await Eventually.TrueAsync(
            () => Task.FromResult(api.Lines.Any(line => line.Contains("[3001]", StringComparison.Ordinal))), Patience, () => api.Output);

        AssertForm(api.Lines);
        var counts = api.Lines.CountBy(NumberOf).ToDictionary();
        Assert.Equal([1201, 1203, 3001, 3002, 3201, 3202, 3205, 3212], counts.Keys.Order());
        Assert.InRange(counts[3201], LoggedPerMinute, minutes * LoggedPerMinute);
        Assert.InRange(counts[3202], 1, minutes);
        Assert.All(counts.Where(count => count.Key is not (3201 or 3202)), count => Assert.Equal(1, count.Value));
    }

    [Fact]
    public async Task Refreshing_trends_making_reports_with_plots_and_mailing_them_prints_only_lines_of_the_form()
    {
        await using var product = await ProductUnderTest.CreateAsync(server);
        var api = await product.StartApiAsync();
        var mails = await product.PushFleetAsync();
        var worker = await product.StartWorkerAsync();
        await Eventually.TrueAsync(
            async () => await product.CountAsync("SELECT count(*) FROM trends") > 0, Patience, () => worker.Output);
        await product.MakeReportsDueAsync();
        await Eventually.TrueAsync(
            async () => await product.CountAsync("SELECT count(*) FROM outbox_mails WHERE sent_time IS NOT NULL") == mails, Patience, () => worker.Output);
        await Eventually.TrueAsync(
            () => Task.FromResult(worker.Lines.Count(line => NumberOf(line) == 4003) == mails), Patience, () => worker.Output);

        AssertForm(api.Lines);
        AssertForm(worker.Lines);
        Assert.All(worker.Lines, line => Assert.InRange(NumberOf(line), 1000, 5999));
        Assert.Contains(worker.Lines, line => NumberOf(line) == 5001);
        Assert.Contains(worker.Lines, line => NumberOf(line) == 4002);
    }

    private static void AssertForm(IReadOnlyList<string> lines)
    {
        var others = lines.Where(line => !Form().IsMatch(line)).ToList();
        Assert.True(others.Count == 0, $"{others.Count} of {lines.Count} lines, such as:\n{string.Join('\n', others.Take(10))}");
    }

    private static int NumberOf(string line) => int.TryParse(Form().Match(line).Groups["number"].Value, out var number) ? number : 0;

    /// <summary>One refused call over gRPC, one over JSON, one over JSON with a wrong key.</summary>
    private static async Task RefuseAsync(GrpcChannel channel, HttpClient http)
    {
        var refusal = await Assert.ThrowsAsync<RpcException>(
            () => new AccessService.AccessServiceClient(channel).GetOwnKeyAsync(new GetOwnKeyRequest()).ResponseAsync);
        Assert.Contains(refusal.StatusCode, (StatusCode[])[StatusCode.Unauthenticated, StatusCode.ResourceExhausted]);
        using var content = new StringContent("{}", Encoding.UTF8, "application/json");
        using var overJson = await http.PostAsync("v1/trends:refresh", content);
        Assert.Contains(overJson.StatusCode, (HttpStatusCode[])[HttpStatusCode.Unauthorized, HttpStatusCode.TooManyRequests]);
        using var wrongKey = new HttpRequestMessage(HttpMethod.Get, "v1/flags") { Headers = { { "authorization", "Bearer nonsense" } } };
        using var answer = await http.SendAsync(wrongKey);
        Assert.Contains(answer.StatusCode, (HttpStatusCode[])[HttpStatusCode.Unauthorized, HttpStatusCode.TooManyRequests]);
    }

    // ISO 8601 in UTC to the millisecond, level, category, event number, sentence.
    [GeneratedRegex(
        @"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z (trce|dbug|info|warn|fail|crit): FleetTrend\.[\w.]+\[(?<number>\d{4})\] [A-Z].*$",
        RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Form();
}
