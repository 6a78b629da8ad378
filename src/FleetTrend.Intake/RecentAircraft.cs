using System.Collections.Concurrent;
using FleetTrend.Store.Fleet;

namespace FleetTrend.Intake;

/// <summary>
/// Aircraft looked up a moment ago, so that a stream does not ask for the same ones with every batch. It may lack what another process
/// has changed within <see cref="MostAge"/>; that an aircraft is not registered is never remembered.
/// </summary>
internal sealed class RecentAircraft(FleetDirectory fleet, TimeProvider clock)
{
    private static readonly TimeSpan MostAge = TimeSpan.FromSeconds(1);

    private readonly ConcurrentDictionary<string, (KnownAircraft Aircraft, long Time)> known = new(StringComparer.Ordinal);

    /// <summary>Those of the aircraft that are registered.</summary>
    /// <param name="registrations">Registration marks, in upper case.</param>
    /// <param name="anew">Looks all of them up, whatever is remembered.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<KnownAircraft>> ReadAsync(IReadOnlyList<string> registrations, bool anew, CancellationToken ct)
    {
        var now = clock.GetTimestamp();
        var found = new List<KnownAircraft>(registrations.Count);
        var missing = new List<string>();
        foreach (var registration in registrations)
        {
            if (!anew && known.TryGetValue(registration, out var entry) && clock.GetElapsedTime(entry.Time, now) < MostAge)
                found.Add(entry.Aircraft);
            else
                missing.Add(registration);
        }

        if (missing.Count == 0)
            return found;
        foreach (var aircraft in (await fleet.ReadAsync(missing, ct)).Values)
        {
            known[aircraft.Registration] = (aircraft, now);
            found.Add(aircraft);
        }

        return found;
    }

    /// <summary>Forgets all: an aircraft was registered, changed, or taken back here.</summary>
    public void Forget() => known.Clear();
}
