namespace FleetTrend.Store.Results;

/// <summary>A figure whose history is kept, in single precision.</summary>
/// <param name="Label">Which of the subject's figures; empty where there is one.</param>
/// <param name="Value">The figure; null where there was not enough data.</param>
/// <param name="Lower">Lower limit; null where there is none.</param>
/// <param name="Upper">Upper limit; null where there is none.</param>
/// <param name="Events">Events or failures behind it.</param>
public sealed record StoredHeadline(string Label, float? Value, float? Lower, float? Upper, int Events);
