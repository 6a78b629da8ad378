using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Norms;

/// <summary>One point of the quadrature over the distribution of rates.</summary>
/// <param name="Mean">Mean rate.</param>
/// <param name="Shape">Shape.</param>
/// <param name="Weight">Posterior weight; all weights sum to one.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct RateNode(double Mean, double Shape, double Weight);
