namespace FleetTrend.Store.Reports;

/// <summary>A report as it was made.</summary>
public sealed record StoredReport
{
    /// <summary>Identifier, given by the store; zero before it is saved. Higher is newer.</summary>
    public long ReportId { get; init; }

    /// <summary>The base it is for; <c>*</c> for the whole fleet.</summary>
    public required string Base { get; init; }

    /// <summary>The type group it is for; null for all.</summary>
    public string? TypeGroup { get; init; }

    /// <summary>First day of the period.</summary>
    public required DateOnly PeriodStart { get; init; }

    /// <summary>Last day of the period.</summary>
    public required DateOnly PeriodEnd { get; init; }

    /// <summary>The moment of knowledge (UTC, microseconds).</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Version of the code that made it.</summary>
    public required string CodeVersion { get; init; }

    /// <summary>The choices behind it, as JSON text.</summary>
    public required string ParametersJson { get; init; }

    /// <summary>Subject of the mail.</summary>
    public required string Subject { get; init; }

    /// <summary>Plain text.</summary>
    public required string Text { get; init; }

    /// <summary>The HTML that is mailed.</summary>
    public required string Html { get; init; }

    /// <summary>What it says as a tree of blocks, as JSON; null where it was stored before there was one.</summary>
    public string? DocumentJson { get; init; }

    /// <summary>Plots by name, as bytes of an image.</summary>
    public required IReadOnlyDictionary<string, byte[]> Plots { get; init; }

    /// <summary>Same report, same seed: the Message-ID of each mail is made from it and the recipient.</summary>
    public required string MessageIdSeed { get; init; }
}
