namespace FleetTrend.Reports.Blocks;

/// <summary>
/// What a report says, as one tree of blocks: the mail's text, the mail's HTML and the page are renderings of it, and it is stored beside
/// the report (<see cref="ReportDocumentJson"/>).
/// </summary>
public sealed record ReportDocument
{
    /// <summary>Its title: what it is about and which days.</summary>
    public required string Title { get; init; }

    /// <summary>A line that stands first, or null.</summary>
    public string? Notice { get; init; }

    /// <summary>The caution that stands above everything.</summary>
    public required string Caution { get; init; }

    /// <summary>Where it comes from: as-of moment, freshness of the records, code version; name and value each.</summary>
    public required IReadOnlyList<KeyValuePair<string, string>> Origin { get; init; }

    /// <summary>The line that a mailbox shows beside the subject; empty in what was stored before it was kept.</summary>
    public string Preview { get; init; } = "";

    /// <summary>
    /// What the mail says: the news and what to do, most pressing first. Empty in reports that were stored before it was kept apart: their mail said
    /// everything.
    /// </summary>
    public IReadOnlyList<ReportSection> Brief { get; init; } = [];

    /// <summary>The whole report, which pages show: its sections, most pressing first.</summary>
    public required IReadOnlyList<ReportSection> Sections { get; init; }

    /// <summary>Where the pages are, or null.</summary>
    public Uri? PagesUrl { get; init; }

    /// <summary>What the mail says of it.</summary>
    internal ReportDocument ForMail() => Brief.Count == 0 ? this : this with { Sections = Brief };
}
