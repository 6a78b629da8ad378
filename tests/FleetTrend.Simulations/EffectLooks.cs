using FleetTrend.Statistics.Effects;

namespace FleetTrend.Simulations;

/// <summary>Looks of many aircraft as the effect sees them at a day.</summary>
internal static class EffectLooks
{
    /// <summary>Looks at an aircraft until a day, the one that holds the action with both shares.</summary>
    public static IEnumerable<EffectLook> Of(EffectTail tail, double action, double until)
    {
        var last = 0.0;
        foreach (var (day, found) in tail.Looks.TakeWhile(l => l.Day <= until))
        {
            var (before, after) = (Math.Clamp(action, last, day) - last, day - Math.Clamp(action, last, day));
            for (var l = 0; l < found.Length; l++)
                yield return new EffectLook((int)day, l, before * tail.PerDay, after * tail.PerDay, found[l]);
            last = day;
        }
    }

    /// <summary>What those not touched had.</summary>
    public static OthersThere[] Others(IEnumerable<EffectLook> looks, int locations)
    {
        var there = new OthersThere[locations];
        foreach (var look in looks)
        {
            var at = there[look.Location];
            // A look that holds the action counts on the side of its larger share.
            there[look.Location] = look.Before >= look.After
                ? at with { FoundBefore = at.FoundBefore + look.Found, ExposureBefore = at.ExposureBefore + look.Before + look.After }
                : at with { FoundAfter = at.FoundAfter + look.Found, ExposureAfter = at.ExposureAfter + look.Before + look.After };
        }

        return there;
    }
}
