using System.Runtime.InteropServices;

namespace FleetTrend.Trends.Expectations;

/// <summary>What one look at one location of one aircraft closes: exposure since the look before, and what it found.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="Base">Its base then.</param>
/// <param name="Location">Path of the location.</param>
/// <param name="Date">Day of the look.</param>
/// <param name="Exposure">Hours, or the rise of the cumulative hazard of the part's like.</param>
/// <param name="Found">Findings.</param>
/// <param name="Since">Day of the look before.</param>
/// <param name="Fitted">For a part with a life, the day it came under observation; null at a rate.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct WatchedLook(string Registration, string Base, string Location, DateOnly Date, double Exposure, int Found, DateOnly Since,
    DateOnly? Fitted);
