namespace FleetTrend.Cli.Analysis;

/// <summary>Intervals of a power law: of the exponent by the method named, of the scale from the information.</summary>
internal sealed record PowerLawIntervals(Range Exponent, Range Scale, string Method, double Confidence);
