using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.Locations;

namespace FleetTrend.Trends.Flags;

/// <summary>What to check for a pattern: the look-for lines of the places, then what usually lies behind. Common practice, no source.</summary>
internal static class Checks
{
    private const int MostPlaces = 3;
    private const double OnePlaceShare = 0.6;

    /// <summary>For an aircraft that drifts: its worst places, then the pattern.</summary>
    public static IReadOnlyList<string> ForDrift(AirframeStanding standing)
    {
        var isOnePlace = standing.Drivers.Count > 0 && standing.Drivers[0].Observed >= OnePlaceShare * standing.Observed;
        return
        [
            .. standing.Drivers.Where(d => d.Observed > 0).Take(isOnePlace ? 1 : MostPlaces)
                .GroupBy(d => d.Kind, StringComparer.Ordinal)
                .Select(g => LookFor(string.Join(", ", g.Select(d => d.Location)), g.Key)),
            .. isOnePlace ? ForOnePlace(standing.Condition, standing.Drivers[0].Kind) : ForManyPlaces(standing.Condition),
        ];
    }

    /// <summary>For a place where a condition keeps coming back.</summary>
    public static IReadOnlyList<string> ForRepeat(LocationStanding repeat) =>
        [LookFor(repeat.Location, repeat.Kind), .. ForOnePlace(repeat.Condition, repeat.Kind)];

    /// <summary>For a base where parts of a kind fail early.</summary>
    public static IReadOnlyList<string> ForBase(string kind) => kind switch
    {
        "gasket" or "intake-gasket" =>
        [
            "Torque practice: the engine maker's value, evenly and in steps, and checked again where the maker asks for it.",
            "Calibration of the torque wrenches used at this base.",
            "Faces flat and clean before the new gasket goes in; an eroded or warped face will not hold one.",
            "Gasket type, part number and batch: a multi-layer gasket rather than a flat one, and the same as at the other bases.",
            "Whether both bases call the same trace a failure, and look equally closely.",
        ],
        "clamp" or "clamp-bolt" or "hose-clamp" =>
        [
            "Torque practice at this base, and calibration of its wrenches; an even gap at the clamp.",
            "Alignment of the joint before it is clamped: a clamp is not there to pull pipes together.",
            "Part number and batch, and whether used hardware goes back in.",
            "Whether both bases call the same wear a failure, and look equally closely.",
        ],
        "coupling" =>
        [
            "Whether couplings are renewed as a set, and how old the stock is when it goes in.",
            "Heat nearby: a leaking exhaust joint or a missing blanket hardens rubber early.",
            "Part number and batch; clamps snug and not cutting in.",
            "Whether both bases call the same hardness a failure, and look equally closely.",
        ],
        _ =>
        [
            "How the part is fitted at this base, step by step, against the maker's instructions.",
            "Part number and batch against those of the other bases.",
            "How the aircraft of this base are flown: short flights, hard cooling, mixture.",
            "Whether both bases call the same state a failure, and look equally closely.",
        ],
    };

    private static string LookFor(string locations, string kind) =>
        $"{locations}: {LocationKinds.Find(kind)?.LookFor ?? "see the maker's instructions."}";

    private static string[] ForOnePlace(Condition condition, string kind) => (condition, kind) switch
    {
        (Condition.Crack, "shroud-edge") =>
        [
            "Stop-drilled cracks add up: judge whether the shroud is due for renewal instead of the next hole.",
            "What shakes it: fasteners, stand-offs, and the muffler's own hangers.",
        ],
        (Condition.Crack, _) =>
        [
            "One place cracking again and again is a symptom: look at the hangers and supports on either side, loose or missing.",
            "Alignment: undo the neighbouring joint and see whether the pipe springs away; it must not be pulled into place.",
            "Slip joints nearby must slide: a stuck one cracks its neighbours.",
            "The repair itself: whether the same weld was welded again, or the part is due for renewal.",
        ],
        (Condition.LeakTrace, _) =>
        [
            "Torque at that joint, evenly, to the engine maker's value; then whether it holds until the next look.",
            "The faces, with the joint apart: flat, clean, no erosion track; a leak that is left erodes the port face.",
            "Gasket type: multi-layer rather than flat, and not used twice.",
        ],
        (Condition.Looseness, _) =>
        [
            "Why it loosens: studs and nuts stretched or worn, locking left out, faces not flat, something that shakes it.",
            "Calibration of the torque wrench used.",
        ],
        (Condition.Hardening, _) => ["Renew couplings as a set; look for heat from a leak or a missing blanket nearby."],
        (Condition.Wear, _) => ["What it rubs on: clearances with the engine moved by hand, and the clamp that should hold it."],
        _ => ["Why it comes back at this place: heat, load and fit on either side of it, and whether the part is due for renewal."],
    };

    private static string[] ForManyPlaces(Condition condition) => condition switch
    {
        Condition.Crack =>
        [
            "Cracks in several places: look at what loads the whole system, such as hangers, engine mounts, propeller balance.",
            "Slip joints must slide; nothing may rest on anything else; shake the whole system and listen.",
        ],
        Condition.LeakTrace =>
        [
            "Leaks at several joints: how the joints of this aircraft were last put together, torque, faces, gasket type.",
            "Port faces: an eroded one will not hold a new gasket.",
        ],
        Condition.Looseness => ["Looseness in several places: hardware used again, locking left out, vibration of the engine."],
        Condition.Erosion or Condition.Corrosion => ["Several places: leaks left standing, mixture and heat, storage in damp or salt air."],
        Condition.Hardening => ["Several couplings: renew as a set; look for heat in the engine bay."],
        _ => ["Several places: what changed on this aircraft when it began, and who worked on it then."],
    };
}
