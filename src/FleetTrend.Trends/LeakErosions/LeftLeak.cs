using FleetTrend.Observations;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.LeakErosions;

/// <summary>
/// A leak at a part of a joint, or at its port face, from its first trace until it was closed, and what became of the face meanwhile. Leaks of one
/// joint that are
/// open together are one.
/// </summary>
internal sealed record LeftLeak
{
    private LeftLeak()
    {
    }

    /// <summary>The aircraft.</summary>
    public required AircraftObservations Aircraft { get; init; }

    /// <summary>The leak.</summary>
    public required LocationEvent Leak { get; init; }

    /// <summary>Path of the port face.</summary>
    public required string Face { get; init; }

    /// <summary>Whether the face was eroded when the leak was first seen.</summary>
    public required bool IsErodedAtFirst { get; init; }

    /// <summary>Flight hours since the first trace at the last look that found the face good; zero where there was none.</summary>
    public required Hours LastGood { get; init; }

    /// <summary>Flight hours since the first trace when the face was found eroded; null where it was not while the leak was left.</summary>
    public Hours? Eroded { get; init; }

    /// <summary>Whether it is open now, on an aircraft that flies.</summary>
    public bool IsOpen => Leak.ClosedDate is null && Aircraft.RetiredDate is null && Aircraft.TypeGroup == Leak.TypeGroup;

    /// <summary>As a life from the first trace on; null where the face was eroded then, or nobody looked at it while the leak was left.</summary>
    public Life? ForFit() =>
        IsErodedAtFirst ? null
        : Eroded is { } eroded ? new Life(LastGood < eroded ? LastGood.Value : eroded.Value, eroded.Value)
        : LastGood.Tenths > 0 ? Life.GoodAt(LastGood.Value)
        : null;

    /// <summary>Every leak of an aircraft at a joint that has a port face, by joint and time.</summary>
    public static IEnumerable<LeftLeak> Find(AircraftObservations aircraft)
    {
        var leaks = aircraft.Events.Where(e => e.Condition == Condition.LeakTrace && (e.Kind.HasLife || e.Kind.Name == ShippedKinds.PortFace)).ToList();
        if (leaks.Count == 0)
            yield break;
        var faces = aircraft.Exposures.Select(e => (e.Location, e.Kind)).Concat(aircraft.Looks.Select(l => (l.Location, l.Kind)))
            .Concat(aircraft.Events.Select(e => (e.Location, e.Kind)))
            .Where(l => l.Kind.Name == ShippedKinds.PortFace)
            .Select(l => l.Location).Distinct(StringComparer.Ordinal)
            .ToLookup(JointOf, StringComparer.Ordinal);
        foreach (var joint in leaks.GroupBy(e => JointOf(e.Location), StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (faces[joint.Key].FirstOrDefault() is not { } face)
                continue;
            var until = DateOnly.MinValue;
            foreach (var leak in joint.OrderBy(e => e.FoundDate).ThenByDescending(e => e.ClosedDate ?? DateOnly.MaxValue)
                .ThenBy(e => e.Location, StringComparer.Ordinal))
            {
                if (leak.FoundDate < until)
                    continue;
                until = leak.ClosedDate ?? DateOnly.MaxValue;
                yield return Follow(aircraft, leak, face, until);
            }
        }
    }

    private static LeftLeak Follow(AircraftObservations aircraft, LocationEvent leak, string face, DateOnly until)
    {
        var erosions = aircraft.Events
            .Where(e => e.Location == face && e.Condition == Condition.Erosion && e.TypeGroup == leak.TypeGroup)
            .OrderBy(e => e.FoundDate).ToList();
        var isAtFirst = erosions.Exists(e => e.FoundDate <= leak.FoundDate && !(e.ClosedDate < leak.FoundDate));
        var eroded = isAtFirst ? null : erosions.Find(e => e.FoundDate > leak.FoundDate && e.FoundDate <= until);
        var end = leak.ClosedDate is { } closed ? aircraft.Hours.On(closed) ?? leak.Found : (Hours?)null;
        var looks = aircraft.Exposures.Where(e => e.Location == face && e.TypeGroup == leak.TypeGroup).SelectMany(e => e.LookHours)
            .Where(h => h > leak.Found && !(h > end)).ToList();
        var lastGood = eroded is not null ? eroded.LastGood : looks.Count > 0 ? looks.Max() : null;
        return new LeftLeak
        {
            Aircraft = aircraft,
            Leak = leak,
            Face = face,
            IsErodedAtFirst = isAtFirst,
            LastGood = lastGood is { } good && good > leak.Found ? good - leak.Found : Hours.Zero,
            Eroded = eroded is null ? null : Hours.FromTenths(Math.Max(1, (eroded.Found - leak.Found).Tenths)),
        };
    }

    private static string JointOf(string location) => location.LastIndexOf('/') is var end and > 0 ? location[..end] : "";
}
