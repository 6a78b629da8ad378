using FleetTrend.Observations;
using FleetTrend.Records;
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
            var after = ShareAfter(look);
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

    private double? ShareAfter(WatchedLook look)
    {
        if (look.Date <= lastDay)
            return 0;
        if (isByPart && look.Fitted is { } fitted)
            return fitted > lastDay ? 1 : null;
        if (look.Since >= lastDay)
            return 1;
        var of = hours[look.Registration];
        var (from, to, cut) = (Of(look.Since), Of(look.Date), Of(lastDay));
        return to > from ? Math.Clamp((to - cut) / (to - from), 0, 1) : 1;

        double Of(DateOnly day) => (of.On(day) ?? Hours.Zero).Value;
    }
}
