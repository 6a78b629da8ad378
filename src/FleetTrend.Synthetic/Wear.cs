using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>How places and parts of the synthetic fleet go bad. Invented figures: plausible, from no source, evidence of nothing.</summary>
internal static class Wear
{
    /// <summary>Places: a condition that arises at a constant rate.</summary>
    private static readonly Dictionary<string, PlaceWear> Places = new(StringComparer.Ordinal)
    {
        ["flange-weld"] = new(Condition.Crack, 0.06),
        ["y-weld"] = new(Condition.Crack, 0.10),
        ["stack-weld"] = new(Condition.Crack, 0.05),
        ["tailpipe-weld"] = new(Condition.Crack, 0.08),
        ["slip-joint"] = new(Condition.LeakTrace, 0.05),
        ["muffler-shell"] = new(Condition.Crack, 0.12),
        ["hanger"] = new(Condition.Looseness, 0.15),
        ["probe"] = new(Condition.Looseness, 0.10),
        ["shroud-edge"] = new(Condition.Crack, 0.30),
        ["port-face"] = new(Condition.Erosion, 0.01),
        ["tube-flange"] = new(Condition.Looseness, 0.06),
        ["tube"] = new(Condition.Wear, 0.03),
    };

    /// <summary>Parts: a condition that ends a life with a Weibull distribution.</summary>
    private static readonly Dictionary<string, PartWear> Parts = new(StringComparer.Ordinal)
    {
        ["gasket"] = new(Condition.LeakTrace, 2.2, 1100),
        ["clamp"] = new(Condition.Crack, 1.8, 4000),
        ["clamp-bolt"] = new(Condition.Erosion, 2.5, 2600),
        ["muffler-baffle"] = new(Condition.MissingPiece, 2.5, 2200),
        ["intake-gasket"] = new(Condition.LeakTrace, 2.0, 3500),
        ["coupling"] = new(Condition.Hardening, 3.5, 1800),
        ["hose-clamp"] = new(Condition.Corrosion, 2.0, 4500),
    };

    /// <summary>How a place of that kind goes bad, or null where it does not.</summary>
    public static PlaceWear? Place(string kind) => Places.GetValueOrDefault(kind);

    /// <summary>How a part of that kind goes bad, or null where it does not.</summary>
    public static PartWear? Part(string kind) => Parts.GetValueOrDefault(kind);
}
