using FleetTrend.Observations;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Effects;

/// <summary>Looks cut at the last day before something was done in another way.</summary>
internal sealed class SplitLooks
{
    private readonly Dictionary<string, int> locations;
    private readonly Dictionary<string, HoursByDay> hours;
    private readonly DateOnly lastDay;
    private readonly bool isByPart;

    /// <summary>Makes it.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="locations">The locations, in the order of their indices.</param>
    /// <param name="lastDay">The last day before.</param>
    /// <param name="isByPart">
    /// Whether a part with a life carries the way in which it was fitted: then one that was fitted before and is looked at after says of neither.
    /// </param>
    public SplitLooks(TypeGroupInputs inputs, IReadOnlyList<string> locations, DateOnly lastDay, bool isByPart)
    {
        this.locations = locations.Index().ToDictionary(l => l.Item, l => l.Index, StringComparer.Ordinal);
        hours = inputs.Aircraft.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal);
        (this.lastDay, this.isByPart) = (lastDay, isByPart);
    }

    /// <summary>The looks as the statistics need them.</summary>
    public IEnumerable<EffectLook> Split(IEnumerable<WatchedLook> looks)
    {
        foreach (var look in looks)
        {
            var after = After(look);
            if (after is { } share)
                yield return new EffectLook(look.Date.DayNumber, locations[look.Location], look.Exposure * (1 - share), look.Exposure * share, look.Found);
        }
    }

    /// <summary>What others had, by location; a look that holds the day counts on the side of its larger share.</summary>
    public OthersThere[] Others(IEnumerable<WatchedLook> looks)
    {
        var there = new OthersThere[locations.Count];
        foreach (var look in Split(looks))
        {
            var at = there[look.Location];
            there[look.Location] = look.Before >= look.After
                ? at with { FoundBefore = at.FoundBefore + look.Found, ExposureBefore = at.ExposureBefore + look.Before + look.After }
                : at with { FoundAfter = at.FoundAfter + look.Found, ExposureAfter = at.ExposureAfter + look.Before + look.After };
        }

        return there;
    }

    // Of a part that was fitted before and is looked at after, nothing is said.
    private double? After(WatchedLook look) => look.Date > lastDay && isByPart && look.Fitted is { } fitted
        ? fitted > lastDay ? 1 : null
        : ShareAfter.Of(look, lastDay, hours[look.Registration]);
}
