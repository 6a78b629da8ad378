using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Effects;

/// <summary>
/// What one look at one location of a touched unit closes. A look whose time since the look before holds the action has both shares: what it
/// found may have arisen on either side.
/// </summary>
/// <param name="Day">Day of the look, counted from any day.</param>
/// <param name="Location">Index of the location.</param>
/// <param name="Before">Exposure before the action: hours, or the rise of the cumulative hazard of the part's like.</param>
/// <param name="After">Exposure after it, in the same unit.</param>
/// <param name="Found">Findings.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct EffectLook(int Day, int Location, double Before, double After, int Found);
