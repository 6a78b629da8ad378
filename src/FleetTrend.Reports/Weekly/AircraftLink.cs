using FleetTrend.Records.Sources;
using FleetTrend.Reports.Blocks;

namespace FleetTrend.Reports.Weekly;

/// <summary>The mark of an aircraft as a link to its page.</summary>
internal static class AircraftLink
{
    /// <summary>On a page.</summary>
    public static Line OnPage(string registration) => Line.Join(new Run.Link(registration, Path(registration)));

    /// <summary>In a mail: the mark alone where the pages have no address.</summary>
    public static Line InMail(string registration, Uri? pages) =>
        pages is null ? registration : Line.Join(new Run.Link(registration, new Uri(pages, Path(registration))));

    /// <summary>To the draft for an authority of a finding, on a page.</summary>
    /// <param name="registration">The aircraft.</param>
    /// <param name="key">The finding.</param>
    public static Line ToDraft(string registration, RecordKey key) => Line.Join(new Run.Link(
        "Draft",
        new Uri($"{Path(registration)}/draft?source={Uri.EscapeDataString(key.Source)}&record={Uri.EscapeDataString(key.SourceRecordId)}", UriKind.Relative)));

    private static Uri Path(string registration) => new($"/aircraft/{Uri.EscapeDataString(registration)}", UriKind.Relative);
}
