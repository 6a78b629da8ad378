namespace FleetTrend.Reports.Blocks;

/// <summary>A run of words and figures that reads as one line or one paragraph.</summary>
/// <param name="Runs">Its pieces, in order; blanks between them are part of the words.</param>
public sealed record Line(IReadOnlyList<Run> Runs)
{
    /// <summary>A line of plain words.</summary>
    public static implicit operator Line(string text) => new([text]);

    /// <summary>A line of pieces.</summary>
    public static Line Join(params Run[] runs) => new(runs);
}
