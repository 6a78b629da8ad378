using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Changes;

namespace FleetTrend.Trends.Flags;

/// <summary>What to check for a pattern: the look-for lines of the places, then what usually lies behind. Common practice, no source.</summary>
internal static class WhatToCheck
{
    private const int MostPlaces = 3;
    private const double OnePlaceShare = 0.6;

    /// <summary>For an aircraft or a base that gets worse: its worst locations, then the pattern.</summary>
    public static IReadOnlyList<string> ForChange(Change change, IReadOnlyDictionary<string, LocationKind> kinds)
    {
        var locations = change.Locations;
        var isOnePlace = locations.Count > 0 && locations[0].Found >= OnePlaceShare * change.FoundSince;
        return
        [
            .. locations.Take(isOnePlace ? 1 : MostPlaces)
                .GroupBy(l => l.Kind, StringComparer.Ordinal)
                .Select(g => LookFor(string.Join(", ", g.Select(l => LocationWords.Name(l.Location))), kinds[g.Key])),
            .. change.Condition is not { } condition ? ForParts(change.FoundSince > 1)
                : isOnePlace ? ForOnePlace(condition, kinds[locations[0].Kind])
                : ForManyPlaces(condition),
        ];
    }

    /// <summary>For a base where parts of a kind fail early.</summary>
    public static IReadOnlyList<string> ForBase(LocationKind kind) => kind.BaseChecks.Count > 0
        ? kind.BaseChecks
        :
        [
            "How the part is fitted at this base, step by step, against the maker's instructions.",
            "Part number and batch against those of the other bases.",
            "How the aircraft of this base are flown: short flights, hard cooling, mixture.",
            "Whether both bases call the same state a failure, and look equally closely.",
        ];

    private static string[] ForParts(bool isMany) =>
    [
        "Part number and batch of what was fitted since it began, against what was fitted before.",
        isMany ? "How these parts were fitted, step by step, against the maker's instructions, and by whom." : "How the part was fitted, against the maker's instructions.",
    ];

    private static string LookFor(string locations, LocationKind kind) =>
        $"{FirstLetter.Capital(locations)}: {(kind.LookFor.Length > 0 ? kind.LookFor : "see the maker's instructions.")}";

    private static IReadOnlyList<string> ForOnePlace(Condition condition, LocationKind kind) => kind.ChecksFor(condition) ?? ForOnePlace(condition);

    private static string[] ForOnePlace(Condition condition) => condition switch
    {
        Condition.Crack =>
        [
            "One place cracking again and again is a symptom: look at the hangers and supports on either side, loose or missing.",
            "Alignment: undo the neighbouring joint and see whether the pipe springs away; it must not be pulled into place.",
            "Slip joints nearby must slide: a stuck one cracks its neighbours.",
            "The repair itself: whether the same weld was welded again, or the part is due for renewal.",
        ],
        Condition.LeakTrace =>
        [
            "Torque at that joint, evenly, to the engine maker's value; then whether it holds until the next look.",
            "The faces, with the joint apart: flat, clean, no erosion track; a leak that is left erodes the port face.",
            "Gasket type: multi-layer rather than flat, and not used twice.",
        ],
        Condition.Looseness =>
        [
            "Why it loosens: studs and nuts stretched or worn, locking left out, faces not flat, something that shakes it.",
            "Calibration of the torque wrench used.",
        ],
        Condition.Hardening => ["Renew couplings as a set; look for heat from a leak or a missing blanket nearby."],
        Condition.Wear => ["What it rubs on: clearances with the engine moved by hand, and the clamp that should hold it."],
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
