using FleetTrend.Api.Pages.Forms;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Texts;
using FleetTrend.Store.Codes;
using FleetTrend.Store.HeldRecords;
using Google.Rpc;
using Microsoft.AspNetCore.Mvc;
using HeldRecord = FleetTrend.Contracts.V1.HeldRecord;
using UnmappedCode = FleetTrend.Store.Codes.UnmappedCode;

namespace FleetTrend.Api.Pages.HeldRecords;

/// <summary>Records that wait: for what, since when, and how they are released.</summary>
internal sealed class HeldRecordsModel(HeldRecordStore held, HeldRecordIntake intake, CodeStore codes, TimeProvider clock) : FormPage
{
    /// <summary>The call that lists the records one by one.</summary>
    public const string Listing = "/fleettrend.v1.IntakeService/ListHeldRecords";

    /// <summary>Most marks and codes that are listed.</summary>
    public const int MostListed = 200;

    private const int MostRecords = 50;

    /// <summary>When the page was made.</summary>
    public DateTimeOffset AsOf { get; } = clock.GetUtcNow();

    /// <summary>Records that wait.</summary>
    public int Count { get; private set; }

    /// <summary>Marks that are not registered.</summary>
    public IReadOnlyList<WaitedForAircraft> Marks { get; private set; } = [];

    /// <summary>Codes without a meaning.</summary>
    public IReadOnlyList<UnmappedCode> UnmappedCodes { get; private set; } = [];

    /// <summary>Records one by one, oldest first; empty where the reader may not see them.</summary>
    public IReadOnlyList<HeldRecord> Records { get; private set; } = [];

    /// <summary>The only source whose records are listed; empty for all.</summary>
    public string Source { get; private set; } = "";

    /// <summary>The page of later ones; null where there is none.</summary>
    public string? NextLink { get; private set; }

    /// <summary>What a record waits for, in words.</summary>
    public static string Awaits(HeldRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.Awaits is null)
            return "Nothing: it is released within seconds.";
        var info = record.Awaits.GetDetail<ErrorInfo>();
        if (info is null)
            return record.Awaits.Message;
        var value = ForeignText.Identifier(info.Metadata.GetValueOrDefault("value") ?? "");
        return $"{info.Metadata.GetValueOrDefault("field")}: {value}. {What(info)}";
    }

    /// <summary>What a record is.</summary>
    public static string Kind(HeldRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Record.ContentCase.ToString();
    }

    /// <summary>Reads what the page shows.</summary>
    /// <param name="source">Name of a source; empty for all.</param>
    /// <param name="page">Token of a page of later records; empty for the oldest.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IActionResult> OnGetAsync(string? source, [FromQuery(Name = "from")] string? page, CancellationToken ct)
    {
        Count = (await held.CountAsync(AsOf.AddYears(1_000), ct)).Values.Sum();
        Marks = await held.ListUnregisteredAsync(MostListed, ct);
        UnmappedCodes = (await codes.ListUnmappedAsync(source: null, MostListed, pageToken: null, ct)).Items;
        if (!May(Listing))
            return Page();
        var only = source ?? "";
        if (only.Length > 0 && SourceRules.CheckName("source", only).Count > 0)
            return BadRequest();
        try
        {
            var listed = await intake.ListAsync(only, "", MostRecords, page ?? "", ct);
            (Source, Records) = (only, listed.Items);
            if (listed.NextPageToken is { } next)
                NextLink = $"/held-records?source={Uri.EscapeDataString(only)}&from={Uri.EscapeDataString(next)}";
            return Page();
        }
        catch (FormatException)
        {
            return BadRequest();
        }
    }

    private static string What(ErrorInfo info) => info.Reason switch
    {
        var reason when reason == Reasons.AircraftNotRegistered.Name => "The aircraft is not registered.",
        var reason when reason == Reasons.CodeNotMapped.Name => "The code has no meaning yet.",
        _ => $"It does not fit: {info.Metadata.GetValueOrDefault("rule")} Its source has to send it corrected, or take it back.",
    };
}
