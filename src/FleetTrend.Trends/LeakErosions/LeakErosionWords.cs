using FleetTrend.Records.Words;
using FleetTrend.Trends.Words;

namespace FleetTrend.Trends.LeakErosions;

/// <summary>How it reads how soon a leak erodes its port face.</summary>
public static class LeakErosionWords
{
    /// <summary>What the chance is and what it is not, for every list of them.</summary>
    public const string Meaning =
        "A leak that is left erodes the port face, and an eroded face means that the cylinder comes off. Hours count from the first trace that somebody saw; the leak is older. "
        + "The chance is for the face only: whether an aircraft flies with an exhaust leak is for the licensed person to decide, whatever the chance.";

    /// <summary>What became of leaks: <c>Of 23 leaks at exhaust ports 4 had eroded the port face when first seen; of the 19 others 3 did while they
    /// were left.</c></summary>
    public static string Statement(LeakErosion erosion)
    {
        ArgumentNullException.ThrowIfNull(erosion);
        var others = erosion.Leaks - erosion.ErodedAtFirst;
        var first = $"Of {NumberWords.Count(erosion.Leaks, "leak", "leaks")} at exhaust ports on {NumberWords.Count(erosion.Aircraft)} aircraft "
            + $"{(erosion.ErodedAtFirst > 0 ? NumberWords.Count(erosion.ErodedAtFirst) : "none")} had eroded the port face when first seen";
        if (others == 0)
            return $"{first}.";
        var looked = erosion.NotLookedAt > 0 ? $" ({NumberWords.Count(erosion.NotLookedAt)} whose face nobody looked at meanwhile)" : "";
        return erosion.Eroded > 0
            ? $"{first}; of the {NumberWords.Count(others)} others {NumberWords.Count(erosion.Eroded)} did while they were left{looked}."
            : $"{first}. We have no case yet of a face that eroded while a leak was left, in {NumberWords.Count(others, "leak", "leaks")}{looked}.";
    }

    /// <summary>An open leak in one line: where, for how long, and the chance if it waits for its next look; no full stop.</summary>
    public static string Statement(OpenLeak leak)
    {
        ArgumentNullException.ThrowIfNull(leak);
        var where = $"{leak.Registration}, {LocationWords.Name(leak.Location)}: first seen {NumberWords.Hours(leak.HoursLeft)} ago";
        if (leak.IsEroded)
            return $"{where}; its port face is eroded already";
        var wait = leak.NextLookHours > leak.HoursLeft ? $"in {NumberWords.Hours(leak.NextLookHours - leak.HoursLeft)}" : "due now";
        return leak.Chance is { Value: not null } chance
            ? $"{where}; if it waits for its next look, {wait}, its port face is eroded by then with a chance of {FigureWords.Format(chance, FigureStyle.Chance).Estimate}"
            : $"{where}; next look {wait}; the chance of an eroded port face cannot be told: {Why(leak)}";
    }

    private static string Why(OpenLeak leak) =>
        leak.Chance?.NotEnoughData is { } why ? why.Replace("not enough data: ", "", StringComparison.Ordinal) : "we have no case yet";
}
