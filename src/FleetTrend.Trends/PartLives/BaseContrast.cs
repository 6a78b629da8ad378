namespace FleetTrend.Trends.PartLives;

/// <summary>Part life at one base against the other bases of the type group.</summary>
public sealed record BaseContrast
{
    /// <summary>Median life here over median life elsewhere (Weibull), with its interval.</summary>
    public required Figure MedianRatio { get; init; }

    /// <summary>Lives elsewhere.</summary>
    public required int OtherLives { get; init; }

    /// <summary>Failures elsewhere.</summary>
    public required int OtherFailures { get; init; }

    /// <summary>Likelihood-ratio statistic of separate against common Weibull parameters, two degrees of freedom.</summary>
    public required double LikelihoodRatio { get; init; }

    /// <summary>Its p-value.</summary>
    public required double PValue { get; init; }

    /// <summary>The same after allowing for all bases and part kinds looked at together.</summary>
    public required double QValue { get; init; }
}
