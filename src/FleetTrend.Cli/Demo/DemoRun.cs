using FleetTrend.Api.Access;
using FleetTrend.Cli.Serve;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Synthetic;
using Spectre.Console;

namespace FleetTrend.Cli.Demo;

/// <summary>The steps of the demo, each with its progress.</summary>
internal static class DemoRun
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Runs the demo. 0 where every planted trouble was found, 1 where one was not.</summary>
    public static async Task<int> RunAsync(HostSettings settings, int seed, bool once, CancellationToken ct)
    {
        using var folder = DemoFolder.Enter(settings.DataFolder);
        AnsiConsole.Write(new Rule("FleetTrend demo: synthetic data, evidence of nothing") { Justification = Justify.Left });
        await StepAsync("Starting PostgreSQL and emptying the demo database", () => DemoFolder.EmptyAsync(settings, ct));
        BothHosts? started = null;
        await StepAsync("Starting API, pages and worker", async () => started = await BothHosts.StartAsync(settings, [], ct));
        await using var hosts = started!;
        using var keys = await DemoKeys.StartAsync(hosts.GrpcUrl, FirstKey.PathIn(settings), ct);

        var push = new FleetPush(keys);
        var fleet = SyntheticSchool.Generate(seed, DateOnly.FromDateTime(DateTime.UtcNow), await push.LayoutsAsync(ct));
        var count = await PushAsync(push, fleet, ct);
        AnsiConsole.MarkupLineInterpolated($"  {count.Accepted:N0} accepted, {count.Unchanged:N0} unchanged, {count.Refusals.Count:N0} refused in {count.Elapsed.TotalSeconds:0.0} s");
        foreach (var refusal in count.Refusals.Take(5))
        {
            AnsiConsole.MarkupLineInterpolated($"  [yellow]{refusal}[/]");
        }

        var wait = new DemoResults(keys, Patience);
        await StepAsync("Computing trends (Hangfire job)", () => wait.RefreshAsync(ct));
        await StepAsync("Making and mailing the weekly reports (Hangfire jobs)", () => wait.ReportAsync(fleet, settings.Mail, ct));
        var allFound = DemoSummary.Print(fleet, await wait.FlagsAsync(ct), await wait.ReportsAsync(ct), hosts, keys, settings.Mail);
        if (!once)
        {
            AnsiConsole.MarkupLine("\nThe pages stay up. Ctrl+C stops everything.");
            await hosts.WaitAsync(ct);
        }

        return allFound && count.Refusals.Count == 0 ? ExitCode.Done : ExitCode.Failed;
    }

    private static async Task StepAsync(string what, Func<Task> step)
    {
        if (!AnsiConsole.Profile.Capabilities.Interactive)
        {
            AnsiConsole.MarkupLineInterpolated($"{what} ...");
            await step();
            return;
        }

        await AnsiConsole.Status().StartAsync($"{what} ...", _ => step());
        AnsiConsole.MarkupLineInterpolated($"[green]done[/]  {what}");
    }

    private static async Task<PushCount> PushAsync(FleetPush push, SyntheticFleet fleet, CancellationToken ct)
    {
        PushCount? count = null;
        var title = $"Pushing {fleet.Records.Count:N0} records of {fleet.Records.Count(r => r.Aircraft is not null)} aircraft over gRPC";
        if (!AnsiConsole.Profile.Capabilities.Interactive)
        {
            AnsiConsole.MarkupLineInterpolated($"{title} ...");
            return await push.PushAsync(fleet, new Progress<int>(), ct);
        }

        await AnsiConsole.Progress().StartAsync(async progress =>
        {
            var bar = progress.AddTask(title, maxValue: fleet.Records.Count);
            count = await push.PushAsync(fleet, new Progress<int>(done => bar.Value = done), ct);
            bar.Value = fleet.Records.Count;
        });
        return count!;
    }
}
