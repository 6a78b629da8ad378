using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Norms;

/// <summary>How well the gamma distribution of rates is known: errors of the logarithms of its shape and of its rate parameter.</summary>
/// <param name="LogShape">Standard error of the logarithm of the shape.</param>
/// <param name="LogRate">Standard error of the logarithm of the rate parameter.</param>
/// <param name="Covariance">Covariance of the two logarithms.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GammaPoissonErrors(double LogShape, double LogRate, double Covariance);
