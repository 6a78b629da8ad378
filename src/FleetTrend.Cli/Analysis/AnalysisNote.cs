using FleetTrend.Statistics;

namespace FleetTrend.Cli.Analysis;

/// <summary>Why a part of a result is missing, or what to know about one.</summary>
/// <param name="About">The part's JSON key.</param>
/// <param name="Reason">Reason for programs.</param>
/// <param name="Explanation">Reason for people.</param>
internal sealed record AnalysisNote(string About, string Reason, string Explanation)
{
    /// <summary>From a typed reason.</summary>
    public static AnalysisNote Describe(string about, NotEstimable reason) => new(about, reason.Kind.ToString(), reason.Explanation);
}
