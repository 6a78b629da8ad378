using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>
/// The facts of one finding that regulations may require to be reported, put together for the certificate holder to judge. It decides nothing, sends nothing
/// and holds no names of persons: notes of records are left out, since they may.
/// </summary>
public sealed record AuthorityDraft
{
    /// <summary>Findings of so many days are recent, open or not.</summary>
    public const int RecentDays = 90;

    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>The finding when it was first seen.</summary>
    public required RecordKey Key { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>The day it was found.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>Whether nothing has closed it yet.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>Whether it is open, or was found within the last <see cref="RecentDays"/> days.</summary>
    public required bool IsCurrent { get; init; }

    /// <summary>Paragraphs under which it may fall; empty where by its kind it falls under none.</summary>
    public required IReadOnlyList<ReportingParagraph> Paragraphs { get; init; }

    /// <summary>The draft as plain text; null where there is no paragraph.</summary>
    public string? Text { get; init; }

    /// <summary>Why there is no draft; null where there is one.</summary>
    public string? WhyNot { get; init; }

    /// <summary>All findings of an aircraft, the newest first.</summary>
    /// <param name="aircraft">The aircraft as observed.</param>
    /// <param name="layout">The locations of its present layout.</param>
    /// <param name="typeGroup">Its type group, as people call it.</param>
    /// <param name="asOf">The moment.</param>
    public static IReadOnlyList<AuthorityDraft> Build(AircraftObservations aircraft, IReadOnlyList<Location> layout, string typeGroup, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var codes = layout.ToDictionary(l => l.Path, l => l.JascCode, StringComparer.Ordinal);
        return [.. aircraft.Events
            .OrderByDescending(e => e.FoundDate).ThenBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.Condition)
            .Select(e => Build(aircraft, e, codes.GetValueOrDefault(e.Location) ?? e.Kind.JascCode, typeGroup, asOf))];
    }

    private static AuthorityDraft Build(AircraftObservations aircraft, LocationEvent found, string? jascCode, string typeGroup, DateTimeOffset asOf)
    {
        var paragraphs = ReportingParagraphs.For(found.Location, jascCode, found.Condition);
        return new AuthorityDraft
        {
            Registration = aircraft.Registration,
            Key = found.Evidence[0],
            Location = found.Location,
            Condition = found.Condition,
            FoundDate = found.FoundDate,
            IsOpen = found.ClosedDate is null,
            IsCurrent = found.ClosedDate is null || found.FoundDate > DateOnly.FromDateTime(asOf.UtcDateTime).AddDays(-RecentDays),
            Paragraphs = paragraphs,
            Text = paragraphs.Count > 0
                ? DraftText.Write(new DraftFacts(aircraft, found, PartThen(aircraft, found), jascCode, typeGroup, asOf), paragraphs)
                : null,
            WhyNot = paragraphs.Count > 0 ? null : DraftText.WhyNot(found, jascCode),
        };
    }

    /// <summary>The part that was there: one that went in on the day of the finding went in after it.</summary>
    private static ObservedLife? PartThen(AircraftObservations aircraft, LocationEvent found) => aircraft.Lives
        .Where(l => l.Location == found.Location && l.StartDate < found.FoundDate)
        .MaxBy(l => l.StartDate);
}
