namespace FleetTrend.Store.Results;

/// <summary>Which rows of an analysis; null takes all.</summary>
public sealed record ResultFilter
{
    /// <summary>The type group.</summary>
    public string? TypeGroup { get; init; }

    /// <summary>The aircraft.</summary>
    public string? Registration { get; init; }

    /// <summary>The location; a row that is about no location is left out.</summary>
    public string? Location { get; init; }

    /// <summary>The kind; a row that is about no kind is left out.</summary>
    public string? Kind { get; init; }
}
