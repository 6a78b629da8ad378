using FleetTrend.Records.Findings;
using static FleetTrend.Records.Findings.Condition;

namespace FleetTrend.Records.Layouts;

/// <summary>
/// The kinds of location that are there from the first start. The lines on what to look for and to check are common practice, no
/// source; JASC titles: FAA JASC table, 2008.
/// </summary>
public static class ShippedKinds
{
    /// <summary>Name of the port face, which a leak at its joint erodes.</summary>
    public const string PortFace = "port-face";

    /// <summary>Name of the edge of a heat shroud, which is stop-drilled until the shroud is renewed.</summary>
    public const string ShroudEdge = "shroud-edge";

    /// <summary>Name of the bolt of a clamp, which is renewed while a wrench still fits its hex.</summary>
    public const string ClampBolt = "clamp-bolt";

    private static readonly Condition[] Any = Enum.GetValues<Condition>();

    private static readonly string[] GasketsAtABase =
    [
        "Torque practice: the engine maker's value, evenly and in steps, and checked again where the maker asks for it.",
        "Calibration of the torque wrenches used at this base.",
        "Faces flat and clean before the new gasket goes in; an eroded or warped face will not hold one.",
        "Gasket type, part number and batch: a multi-layer gasket rather than a flat one, and the same as at the other bases.",
        "Whether both bases call the same trace a failure, and look equally closely.",
    ];

    private static readonly string[] ClampsAtABase =
    [
        "Torque practice at this base, and calibration of its wrenches; an even gap at the clamp.",
        "Alignment of the joint before it is clamped: a clamp is not there to pull pipes together.",
        "Part number and batch, and whether used hardware goes back in.",
        "Whether both bases call the same wear a failure, and look equally closely.",
    ];

    private static readonly string[] CouplingsAtABase =
    [
        "Whether couplings are renewed as a set, and how old the stock is when it goes in.",
        "Heat nearby: a leaking exhaust joint or a missing blanket hardens rubber early.",
        "Part number and batch; clamps snug and not cutting in.",
        "Whether both bases call the same hardness a failure, and look equally closely.",
    ];

    private static readonly string[] ShroudCracks =
    [
        "Stop-drilled cracks add up: judge whether the shroud is due for renewal instead of the next hole.",
        "What shakes it: fasteners, stand-offs, and the muffler's own hangers.",
    ];

    private static readonly LocationKind[] List =
    [
        // Exhaust: places.
        CrackWatched("flange-weld", "Weld of flange to stack", "Cracks in the weld and in the metal beside it; a sudden, complete break is most common here.", "7810", Crack, LeakTrace, Erosion, Corrosion, Distortion, Other),
        CrackWatched("y-weld", "Weld of a Y joint", "Cracks in the crotch of the Y and beside the weld; grey or rose stains.", "7810", Crack, LeakTrace, Erosion, Corrosion, Distortion, Other),
        CrackWatched("stack-weld", "Weld along a stack", "Cracks along and beside the weld; thin or bulged metal.", "7810", Crack, LeakTrace, Erosion, Corrosion, Distortion, Other),
        CrackWatched("tailpipe-weld", "Weld of the tailpipe", "Cracks at the weld, pipe hanging freely and not touching the cowl.", "7810", Crack, LeakTrace, Erosion, Corrosion, Looseness, Distortion, Other),
        Place(PortFace, "Exhaust port face", "Erosion tracks across the face; an eroded face will not hold a new gasket.", "8530", Erosion, Corrosion, LeakTrace, Distortion, Crack, Other),
        CrackWatched("slip-joint", "Slip joint", "It must slide; a stuck joint cracks its neighbours.", "7810", Crack, LeakTrace, Corrosion, Wear, Looseness, Distortion, Other),
        CrackWatched("muffler-shell", "Muffler shell", "Cracks at inlets and seams, thin or bulged metal, with the shroud off.", "7820", Crack, LeakTrace, Erosion, Corrosion, Distortion, Other),
        Place("hanger", "Hanger or support", "Shake it: nothing rattles, nothing rests on anything else.", "7800", Crack, Looseness, Wear, MissingPiece, Distortion, Corrosion, Other),
        Place("probe", "Probe clamped to a pipe", "Clamp tight, pipe not wearing through below it.", "7722", Looseness, Wear, Crack, LeakTrace, Other),
        CrackWatched(ShroudEdge, "Edge of the heat shroud", "Cracks from edges and cut-outs; stop-drilled cracks add up until the shroud is renewed.", "2140", [new(Crack, ShroudCracks)], Crack, Wear, Distortion, Corrosion, Looseness, MissingPiece, Other),

        // Exhaust: parts with a life.
        Part("gasket", "Exhaust gasket", "Stains at the joint; even torque to the engine maker's value.", "7810", GasketsAtABase, [LeakTrace, Erosion, Distortion, MissingPiece, Crack], Looseness, Corrosion, Other),
        Part("clamp", "Clamp of a joint", "Cracks in the band, erosion from heat, even gap.", "7810", ClampsAtABase, [Crack, Erosion, Distortion, MissingPiece], LeakTrace, Looseness, Corrosion, Wear, Other),
        Part(ClampBolt, "Bolt and nut of a clamp", "Eroded and corroded hexes: renew while a wrench still fits.", "7810", ClampsAtABase, [Erosion, Corrosion, Crack, MissingPiece, Wear], Looseness, Distortion, Other),
        Part("muffler-baffle", "Flame cone and baffles of the muffler", "Look inside: all pieces there; loose pieces can block the outlet.", "7820", [], [MissingPiece, Crack, Erosion, Looseness, Distortion], Corrosion, Wear, Other),

        // Induction.
        Place("tube-flange", "Flange of an induction tube", "Flange bolts tight and even; blue fuel stains below.", "8530", LeakTrace, Looseness, Crack, Wear, Distortion, Corrosion, Other),
        Place("tube", "Induction tube", "Dents, chafing, the cylinder mark: some tubes are not alike.", "8530", Crack, Wear, Distortion, Corrosion, LeakTrace, Looseness, Other),
        Part("intake-gasket", "Induction gasket", "Present, not folded; blue fuel stains below.", "8530", GasketsAtABase, [LeakTrace, Distortion, MissingPiece, Crack], Looseness, Wear, Other),
        Part("coupling", "Rubber coupling of an induction tube", "Hardened, cracked or loose: couplings are renewed as a set.", "7160", CouplingsAtABase, [Hardening, Crack, LeakTrace, Wear], Looseness, Distortion, Other),
        Part("hose-clamp", "Clamp of a coupling or hose", "Snug, not cutting into the hose.", "7160", ClampsAtABase, [Crack, MissingPiece, Corrosion, Wear], Looseness, Distortion, Other),

        // Anything else that an operator watches in the same way.
        Part("part", "Another part with a life", "See the maker's instructions.", null, [], Any),
        Place("place", "Another place", "See the maker's instructions.", null, Any),
    ];

    private static readonly Dictionary<string, LocationKind> ByName = List.ToDictionary(k => k.Name, StringComparer.Ordinal);

    /// <summary>All kinds, exhaust first.</summary>
    public static IReadOnlyList<LocationKind> All => List;

    /// <summary>The shipped kind of that name.</summary>
    /// <exception cref="ArgumentException">None is shipped under it.</exception>
    public static LocationKind Get(string name) =>
        ByName.GetValueOrDefault(name) ?? throw new ArgumentException($"No location kind '{name}' is shipped.", nameof(name));

    private static LocationKind Place(string name, string title, string lookFor, string? jasc, params Condition[] conditions) =>
        new(name, title, lookFor, jasc, conditions, [], [], [], []);

    /// <summary>A place that is looked at for cracks first of all.</summary>
    private static LocationKind CrackWatched(string name, string title, string lookFor, string? jasc, params Condition[] conditions) =>
        CrackWatched(name, title, lookFor, jasc, [], conditions);

    private static LocationKind CrackWatched(
        string name, string title, string lookFor, string? jasc, ConditionChecks[] checks, params Condition[] conditions) =>
        new(name, title, lookFor, jasc, conditions, [], [Crack], checks, []);

    private static LocationKind Part(
        string name, string title, string lookFor, string? jasc, string[] baseChecks, Condition[] failures, params Condition[] others) =>
        new(name, title, lookFor, jasc, [.. failures, .. others], failures, [], [], baseChecks);
}
