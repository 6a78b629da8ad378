namespace FleetTrend.Reports.Weekly;

/// <summary>A report as bytes and text: ready to be mailed, stored and shown.</summary>
public sealed record RenderedReport
{
    /// <summary>Subject of the mail: one line, no control characters.</summary>
    public required string Subject { get; init; }

    /// <summary>The plain-text part of the mail, which says what the HTML part does: lines of at most 78 columns, ended by <c>\n</c>.</summary>
    public required string Text { get; init; }

    /// <summary>The HTML part of the mail: a whole document; what plots it has are <c>cid:NAME</c>, a name of <see cref="Plots"/> each.</summary>
    public required string Html { get; init; }

    /// <summary>What it says, as JSON (<see cref="Blocks.ReportDocumentJson"/>): what a page of the stored report is rendered from.</summary>
    public required string DocumentJson { get; init; }

    /// <summary>The plots of the whole report: name, such as <c>levels.png</c>, to PNG bytes.</summary>
    public required IReadOnlyDictionary<string, byte[]> Plots { get; init; }
}
