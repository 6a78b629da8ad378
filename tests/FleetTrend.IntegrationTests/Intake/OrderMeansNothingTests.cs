using System.Text.Json;
using CsCheck;
using FleetTrend.Contracts.V1;
using FleetTrend.Observations;
using FleetTrend.Store.Histories;
using FleetTrend.Synthetic;
using FleetTrend.Trends;
using Google.Protobuf;
using Microsoft.Extensions.DependencyInjection;
using Xunit.Abstractions;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>
/// Order of arrival means nothing (domain rule 9): a history of two sources, shuffled, partly sent twice, cut into batches and
/// pushed by both at once, ends in the state and the statistics of what counts in the end, pushed once and in order.
/// </summary>
[Collection(SharedPostgres.Name)]
public sealed class OrderMeansNothingTests(PostgresFixture postgres, ITestOutputHelper output)
{
    private const int Arrangements = 6;
    private static readonly DateOnly LastDate = new(2025, 6, 30);
    private static readonly DateTimeOffset AsOf = new(2025, 7, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Whatever_the_order_the_batches_and_the_repeats_state_and_statistics_are_the_same()
    {
        var history = new TwistedHistory(await GenerateAsync(), seed: 17);
        List<IMessage> inOrder = [.. history.Superseded, .. history.Final.Values.OrderBy(r => r.Aircraft is null)];
        var clean = await RunAsync([inOrder], [500], history);
        output.WriteLine($"{history.Steps.Count} steps, {history.Final.Count} records count in the end; trends have {clean.Trends.Length:#,0} characters.");
        Assert.Equal(
            history.Final.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => (f.Key, f.Value.Key.Revision)),
            clean.Records.Select(r => (r.Key, r.Value.Key.Revision)));
        Assert.Contains("exhaust/cyl-5/flange-weld, which the layout of type group synthetic-trainer-four does not have", clean.Trends, StringComparison.Ordinal);

        var arrangements = Gen.Select(Gen.Shuffle(history.Steps.ToArray()), Gen.Int[0, history.Steps.Count - 1].Array[200], Gen.Int[1, 150].Array[1, 12]);
        await arrangements.SampleAsync(
            async arrangement =>
            {
                var (steps, repeats, sizes) = arrangement;
                var sent = steps.Concat(repeats.Select(i => steps[i])).ToList();
                var bySource = sent.GroupBy(TwistedHistory.SourceOf).Select(g => g.ToList()).ToList();

                var run = await RunAsync(bySource, sizes, history);

                Assert.Equal(clean.Records, run.Records);
                Assert.Equal(clean.Trends, run.Trends);
            },
            iter: Arrangements, threads: 1, print: arrangement => $"batches of {string.Join(", ", arrangement.Item3)}");
    }

    private async Task<SyntheticFleet> GenerateAsync()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var layouts = (await server.Layouts.ListLayoutsAsync(new ListLayoutsRequest())).Layouts;
        return SyntheticSchool.Generate(seed: 3, LastDate, layouts);
    }

    /// <summary>Pushes each list at once with the others, each from a client of its source, and reads what comes of it.</summary>
    private async Task<(SortedDictionary<string, Record> Records, string Trends)> RunAsync(
        IReadOnlyList<List<IMessage>> lists, IReadOnlyList<int> sizes, TwistedHistory history)
    {
        await using var server = await ApiServer.StartAsync(postgres);
        foreach (var (name, layout) in new[]
        {
            ("synthetic-trainer-four", SyntheticSchool.FourCylinderLayout), ("synthetic-tourer-six", SyntheticSchool.SixCylinderLayout),
        })
        {
            await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = new TypeGroup { Name = name, Layout = layout } });
        }

        var clients = new Dictionary<string, IntakeService.IntakeServiceClient>
        {
            [TwistedHistory.ShopSource] = await server.IntakeOfAsync(TwistedHistory.ShopSource),
            [TwistedHistory.LogSource] = await server.IntakeOfAsync(TwistedHistory.LogSource),
        };
        await Task.WhenAll(lists.Select(list => Task.Run(() => PushAsync(server, clients, list, sizes))));

        // What waits for an aircraft or a code that has come is let in on its own.
        await Eventually.TrueAsync(async () => (await ReadHeldAsync(server)).All(r => history.Waiting.Contains(TwistedHistory.NameOf(r.Key))));
        return (await ReadRecordsAsync(server), await ComputeAsync(server));
    }

    private static async Task PushAsync(
        ApiServer server, Dictionary<string, IntakeService.IntakeServiceClient> clients, List<IMessage> steps, IReadOnlyList<int> sizes)
    {
        var codes = new CodeService.CodeServiceClient(server.Channel);
        for (int from = 0, batch = 0; from < steps.Count; batch++)
        {
            var together = steps.Skip(from).Take(sizes[batch % sizes.Count]).ToList();
            from += together.Count;
            foreach (var code in together.OfType<SourceCode>())
                await codes.SetCodeAsync(new SetCodeRequest { Code = code });
            foreach (var source in together.OfType<Record>().GroupBy(r => r.Key.Source))
            {
                var outcomes = batch % 2 == 0
                    ? await PushTogetherAsync(clients[source.Key], source)
                    : await StreamAsync(clients[source.Key], source);
                Assert.DoesNotContain(outcomes, o => o.State == RecordState.Refused);
            }
        }
    }

    private static async Task<IReadOnlyList<RecordOutcome>> PushTogetherAsync(IntakeService.IntakeServiceClient intake, IEnumerable<Record> records) =>
        (await intake.PushRecordsAsync(new PushRecordsRequest { Records = { records }, HoldUnregistered = true })).Outcomes;

    private static async Task<IReadOnlyList<RecordOutcome>> StreamAsync(IntakeService.IntakeServiceClient intake, IEnumerable<Record> records)
    {
        using var call = intake.StreamRecords();
        foreach (var record in records)
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = record, HoldUnregistered = true });
        await call.RequestStream.CompleteAsync();
        var outcomes = new List<RecordOutcome>();
        while (await call.ResponseStream.MoveNext(default))
            outcomes.Add(call.ResponseStream.Current.Outcome);
        return outcomes;
    }

    private static async Task<IReadOnlyList<Record>> ReadHeldAsync(ApiServer server)
    {
        var held = await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest { PageSize = 500 });
        return [.. held.Records.Select(r => r.Record)];
    }

    /// <summary>The newest of each record that is stored or waits, by source and identifier.</summary>
    private static async Task<SortedDictionary<string, Record>> ReadRecordsAsync(ApiServer server)
    {
        var records = (await ReadHeldAsync(server)).ToList();
        var client = new RecordService.RecordServiceClient(server.Channel);
        var token = "";
        do
        {
            var page = await client.ListRecordsAsync(new ListRecordsRequest { PageSize = 1_000, PageToken = token });
            records.AddRange(page.Records.Select(r => r.Record));
            token = page.NextPageToken;
        }
        while (token.Length > 0);
        return new SortedDictionary<string, Record>(
            records.GroupBy(r => TwistedHistory.NameOf(r.Key)).ToDictionary(g => g.Key, g => g.MaxBy(r => r.Key.Revision)!), StringComparer.Ordinal);
    }

    private static async Task<string> ComputeAsync(ApiServer server)
    {
        var now = await server.Services.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        var fleet = await server.Services.GetRequiredService<HistoryReader>().ReadAsync(now, default);
        // When a retraction came in differs from order to order, and a retraction alone is listed with that day.
        return JsonSerializer.Serialize(FleetTrends.Compute(
            Observe.Fleet(fleet with { AsOf = AsOf, RetractionsAlone = [] }), new TrendParameters(), "test"), TrendJson.Options);
    }
}
