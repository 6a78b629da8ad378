using System.Runtime.CompilerServices;

namespace FleetTrend.Statistics;

/// <summary>The one check of a confidence that every estimator makes.</summary>
internal static class Confidences
{
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not strictly between 0 and 1.</exception>
    internal static void Check(double confidence, [CallerArgumentExpression(nameof(confidence))] string name = "")
    {
        if (!(confidence is > 0 and < 1))
            throw new ArgumentOutOfRangeException(name, confidence, "A confidence lies strictly between 0 and 1.");
    }
}
