using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Effects;

/// <summary>What the units that were not touched had at one location.</summary>
/// <param name="FoundBefore">Findings before the action.</param>
/// <param name="ExposureBefore">Exposure before it.</param>
/// <param name="FoundAfter">Findings after it.</param>
/// <param name="ExposureAfter">Exposure after it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct OthersThere(int FoundBefore, double ExposureBefore, int FoundAfter, double ExposureAfter);
