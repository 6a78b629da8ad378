namespace FleetTrend.Trends;

/// <summary>A number that a person sees, with all that must stand beside it: interval, counts and method.</summary>
/// <remarks>The as-of moment and the code version stand once, on the <see cref="TrendSnapshot"/> that holds it.</remarks>
public sealed record Figure
{
    /// <summary>The estimate; null where there is not enough data for one (then <see cref="NotEnoughData"/> says why).</summary>
    public double? Value { get; init; }

    /// <summary>Lower end of the interval; null where there is none.</summary>
    public double? Lower { get; init; }

    /// <summary>Upper end of the interval; null where there is none. It may exist without a value: zero events have an upper limit.</summary>
    public double? Upper { get; init; }

    /// <summary>Confidence of the interval, such as 0.95.</summary>
    public required double Confidence { get; init; }

    /// <summary>Unit of the value, such as <c>per 1,000 h</c>, <c>h</c> or empty for a ratio.</summary>
    public required string Unit { get; init; }

    /// <summary>Events or failures behind it.</summary>
    public required int Events { get; init; }

    /// <summary>Hours of exposure behind it; null where it rests on lives.</summary>
    public double? ExposureHours { get; init; }

    /// <summary>Lives behind it; null where it rests on exposure.</summary>
    public int? Lives { get; init; }

    /// <summary>Name of the method and its source, such as <c>exact Poisson (Garwood 1936)</c>.</summary>
    public required string Method { get; init; }

    /// <summary>
    /// Of a rate over several aircraft, variance over mean of their counts beside the common rate: near one where they have one rate and findings
    /// come singly. Null elsewhere, without events, and in trends stored before it was told.
    /// </summary>
    public double? Dispersion { get; init; }

    /// <summary>For an age, the lowest one at which the data say anything: nothing failed before it. Null elsewhere.</summary>
    public double? DataFrom { get; init; }

    /// <summary>For an age, the oldest one at which a part was looked at. Null elsewhere.</summary>
    public double? DataTo { get; init; }

    /// <summary>Why there is no value, in words such as <c>not enough data: 1 failure</c>; null where there is one.</summary>
    public string? NotEnoughData { get; init; }
}
