using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Cli.Serve;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Synthetic;
using Spectre.Console;

namespace FleetTrend.Cli.Demo;

/// <summary>The steps of the demo, each with its progress.</summary>
internal static class DemoRun
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Runs the demo. 0 where everything planted was answered as it should be, 1 where something was not.</summary>
    public static async Task<int> RunAsync(HostSettings settings, int seed, bool once, CancellationToken ct)
    {
        using var folder = DemoFolder.Enter(settings.DataFolder);
        AnsiConsole.Write(new Rule("FleetTrend demo: synthetic data, evidence of nothing") { Justification = Justify.Left });
        await StepAsync("Starting PostgreSQL and emptying the demo database", () => DemoFolder.EmptyAsync(settings, ct));
        BothHosts? started = null;
        await StepAsync("Starting API, pages and worker", async () => started = await BothHosts.StartAsync(settings, [], ct));
        await using var hosts = started!;
        using var keys = await DemoKeys.StartAsync(hosts.GrpcUrl, FirstKey.PathIn(settings), ct);

        using var push = new FleetPush(keys);
        var fleet = SyntheticSchool.Generate(seed, DateOnly.FromDateTime(DateTime.UtcNow), await push.LayoutsAsync(ct));
        await push.RegisterAsync(fleet, ct);
        var wait = new DemoResults(keys, Patience);
        var action = fleet.Action;
        var before = await PushAsync(push, [.. fleet.Records.Take(action.RecordsBefore)], $"until {Day(action.ActionDate)}", ct);
        await StepAsync("Computing trends of then (Hangfire jobs)", () => wait.RefreshAsync(ct));
        await StepAsync($"Recording what was done about {action.Registration} on {Day(action.ActionDate)}", () => wait.ActAsync(action, ct));
        var after = await PushAsync(push, [.. fleet.Records.Skip(action.RecordsBefore)], "since", ct);
        await StepAsync("Computing trends of today (Hangfire jobs)", () => wait.RefreshAsync(ct));
        await StepAsync("Making and mailing the weekly reports (Hangfire jobs)", () => wait.ReportAsync(fleet, settings.Mail, ct));
        var summary = new DemoSummary(fleet, await wait.FlagsAsync(ct), await wait.EffectsAsync(ct), await wait.QuietAsync(ct));
        var isAsPlanted = summary.Print(await wait.ReportsAsync(ct), hosts, keys, settings.Mail);
        if (!once)
        {
            AnsiConsole.MarkupLine("\nThe pages stay up. Ctrl+C stops everything.");
            await hosts.WaitAsync(ct);
        }

        return isAsPlanted && before.Refusals.Count + after.Refusals.Count == 0 ? ExitCode.Done : ExitCode.Failed;
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

    private static async Task<PushCount> PushAsync(FleetPush push, IReadOnlyList<Record> records, string when, CancellationToken ct)
    {
        PushCount? count = null;
        var title = $"Pushing {records.Count:N0} records over gRPC, {when}";
        if (AnsiConsole.Profile.Capabilities.Interactive)
        {
            await AnsiConsole.Progress().StartAsync(async progress =>
            {
                var bar = progress.AddTask(title, maxValue: records.Count);
                count = await push.PushAsync(records, new Progress<int>(done => bar.Value = done), ct);
                bar.Value = records.Count;
            });
        }
        else
        {
            AnsiConsole.MarkupLineInterpolated($"{title} ...");
            count = await push.PushAsync(records, new Progress<int>(), ct);
        }

        AnsiConsole.MarkupLineInterpolated($"  {count!.Accepted:N0} accepted, {count.Unchanged:N0} unchanged, {count.Refusals.Count:N0} refused in {count.Elapsed.TotalSeconds:0.0} s");
        foreach (var refusal in count.Refusals.Take(5))
        {
            AnsiConsole.MarkupLineInterpolated($"  [yellow]{refusal}[/]");
        }

        return count;
    }

    private static string Day(DateOnly date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
