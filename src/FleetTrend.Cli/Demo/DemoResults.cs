using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Synthetic;
using Grpc.Core;

namespace FleetTrend.Cli.Demo;

/// <summary>Asks over gRPC for what the jobs make, and waits until it is there.</summary>
internal sealed class DemoResults(DemoKeys keys, TimeSpan patience)
{
    private const int PageSize = 500;
    private const string WholeFleet = "*";
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(500);

    private readonly TrendService.TrendServiceClient trends = new(keys.Reading);
    private readonly ReportService.ReportServiceClient reports = new(keys.Reading);

    /// <summary>Asks for a refresh and waits for trends that have seen all records pushed so far.</summary>
    public async Task RefreshAsync(CancellationToken ct)
    {
        var requested = (await new TrendService.TrendServiceClient(keys.Administering)
            .RequestRefreshAsync(new RequestRefreshRequest(), cancellationToken: ct)).RequestTime;
        await UntilAsync("trends", async () => await LatestAsOfAsync(ct) is { } asOf && asOf >= requested.ToDateTimeOffset(), ct);
    }

    /// <summary>Sets invented recipients, asks for the reports of this week, and waits for them and their mails.</summary>
    public async Task ReportAsync(SyntheticFleet fleet, MailSettings mail, CancellationToken ct)
    {
        var administering = new ReportService.ReportServiceClient(keys.Administering);
        foreach (var place in fleet.Bases.Append(WholeFleet))
        {
            var mailbox = place == WholeFleet ? "director" : $"shop.{place.ToLowerInvariant().Replace(' ', '-')}";
            await administering.SetRecipientsAsync(
                new SetRecipientsRequest { Base = place, Addresses = { $"{mailbox}@synthetic.example" } }, cancellationToken: ct);
        }

        var expected = fleet.Bases.Count + 1;
        await administering.RequestReportAsync(new RequestReportRequest { RequestId = "demo" }, cancellationToken: ct);
        await UntilAsync("reports", async () => (await ReportsAsync(ct)).Count >= expected, ct);
        if (mail.Smtp is null)
        {
            await UntilAsync("mails", () => Task.FromResult(MailFiles(mail).Count >= expected), ct);
        }
    }

    /// <summary>Says of each flag of the aircraft what was done about it, and when.</summary>
    /// <exception cref="DemoRefusedException">The aircraft gets no flag: what was planted there was not found.</exception>
    public async Task ActAsync(PlannedAction action, CancellationToken ct)
    {
        IReadOnlyList<Flag> listed = [];
        var asked = new ListFlagsRequest { Registration = action.Registration, PageSize = PageSize };
        await UntilAsync( // flags are raised just after the trends are published
            $"flag of {action.Registration}",
            async () => (listed = (await new FlagService.FlagServiceClient(keys.Reading).ListFlagsAsync(asked, cancellationToken: ct)).Flags).Count > 0, ct);
        var flags = new FlagService.FlagServiceClient(keys.Administering);
        foreach (var flag in listed)
        {
            await flags.ActOnFlagAsync(
                new ActOnFlagRequest
                {
                    FlagId = flag.FlagId,
                    ActedBy = "lead mechanic (synthetic)",
                    ActionDate = new() { Year = action.ActionDate.Year, Month = action.ActionDate.Month, Day = action.ActionDate.Day },
                    Comment = action.What,
                },
                cancellationToken: ct);
        }
    }

    /// <summary>Flags that are not settled, and those about which something was done that helped.</summary>
    public async Task<IReadOnlyList<Flag>> FlagsAsync(CancellationToken ct)
    {
        var flags = new FlagService.FlagServiceClient(keys.Reading);
        var open = await flags.ListFlagsAsync(new ListFlagsRequest { PageSize = PageSize }, cancellationToken: ct);
        var helped = await flags.ListFlagsAsync(new ListFlagsRequest { PageSize = PageSize, State = FlagState.Helped }, cancellationToken: ct);
        return [.. open.Flags, .. helped.Flags];
    }

    /// <summary>Whether what was done helped.</summary>
    public async Task<IReadOnlyList<Effect>> EffectsAsync(CancellationToken ct) =>
        (await trends.ListEffectsAsync(new ListEffectsRequest { PageSize = PageSize }, cancellationToken: ct)).Effects;

    /// <summary>What is asked about.</summary>
    public async Task<IReadOnlyList<Quietness>> QuietAsync(CancellationToken ct) =>
        (await trends.ListQuietAsync(new ListQuietRequest { PageSize = PageSize }, cancellationToken: ct)).Quiet;

    /// <summary>Reports, newest first.</summary>
    public async Task<IReadOnlyList<Report>> ReportsAsync(CancellationToken ct) =>
        (await reports.ListReportsAsync(new ListReportsRequest { PageSize = PageSize }, cancellationToken: ct)).Reports;

    /// <summary>Message files in the mailbox folder.</summary>
    public static IReadOnlyList<string> MailFiles(MailSettings mail) =>
        Directory.Exists(mail.Folder) ? Directory.GetFiles(mail.Folder, "*.eml") : [];

    private async Task<DateTimeOffset?> LatestAsOfAsync(CancellationToken ct)
    {
        try
        {
            return (await trends.ListRatesAsync(new ListRatesRequest { PageSize = 1 }, cancellationToken: ct)).Origin.AsOfTime.ToDateTimeOffset();
        }
        catch (RpcException none) when (none.StatusCode == StatusCode.FailedPrecondition)
        {
            return null;
        }
    }

    private async Task UntilAsync(string what, Func<Task<bool>> isThere, CancellationToken ct)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(ct);
        limit.CancelAfter(patience);
        try
        {
            while (!await isThere())
            {
                await Task.Delay(BetweenLooks, limit.Token);
            }
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            throw new DemoRefusedException($"The {what} did not come within {patience.TotalMinutes:0} minutes; the log above may say why.");
        }
    }
}
