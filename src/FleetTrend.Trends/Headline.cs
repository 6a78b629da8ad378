namespace FleetTrend.Trends;

/// <summary>The figure of an answer whose history is kept.</summary>
/// <param name="Label">Which of several figures of the subject, such as a condition or a base; empty where there is one.</param>
/// <param name="Value">The figure; null where there is not enough data.</param>
/// <param name="Lower">Lower limit; null where there is none.</param>
/// <param name="Upper">Upper limit; null where there is none.</param>
/// <param name="Events">Events or failures behind it.</param>
public sealed record Headline(string Label, double? Value, double? Lower, double? Upper, int Events)
{
    /// <summary>The figure of that label.</summary>
    public static Headline From(string label, Figure figure) => new(label, figure.Value, figure.Lower, figure.Upper, figure.Events);
}
