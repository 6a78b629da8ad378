using FleetTrend.Records.Words;

namespace FleetTrend.Trends.FailureChances;

/// <summary>How chances before the next look read.</summary>
public static class FailureChanceWords
{
    /// <summary>What a chance is and what it is not, for every list of them.</summary>
    public const string Meaning =
        "The chance that a part fails between the look that last found it good and its next, if it lasts as its like do. A small chance does not show that a part is "
        + "sound; the look does.";

    /// <summary>How they are worked out.</summary>
    public const string Method =
        "1 - S(next look)/S(last good look), by the fitted lives of its kind on its type group; limits by the delta method on the logarithm of the hazard between the two looks "
        + "(Meeker and Escobar 1998). Parts are taken as independent.";

    /// <summary>An aircraft in one line.</summary>
    public static string Statement(FailureChance chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var count = NumberWords.Count(chance.Parts.Count, "part", "parts");
        if (chance.Parts.Count == 0)
            return $"{chance.Registration}: nothing can be said, {Left(chance)}";
        var first = chance.Parts[0];
        return $"{chance.Registration}: {NumberWords.Rounded(chance.Expected)} failures among {count} before the next look; most likely "
            + $"{LocationWords.Name(first.Location)}, {NumberWords.Percent(first.Chance)}";
    }

    /// <summary>Parts without a chance, and why: <c>2 of unknown age</c>; empty where there is none.</summary>
    public static string Left(FailureChance chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        List<string> left = [];
        if (chance.AgeUnknown > 0)
            left.Add($"{NumberWords.Count(chance.AgeUnknown)} of unknown age");
        if (chance.TooFewFailures > 0)
            left.Add($"{NumberWords.Count(chance.TooFewFailures)} of kinds that have failed too seldom to tell");
        return string.Join(", ", left);
    }

    /// <summary>Whether the chances came true, in a sentence.</summary>
    public static string CameTrue(ChanceCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        if (calibration.Groups.Count == 0)
            return $"{calibration.TypeGroup}: too few looks since {NumberWords.Day(calibration.FittedDate)} to hold the chances against.";
        var off = calibration.Groups.Count(g => g.IsOff);
        return $"{calibration.TypeGroup}: by what was known on {NumberWords.Day(calibration.FittedDate)}, {NumberWords.Rounded(calibration.Expected)} failures were foreseen at "
            + $"{NumberWords.Count(calibration.Looks)} looks since; {NumberWords.Count(calibration.Found)} were found. "
            + (off == 0 ? "Every group is within its limits." : $"{NumberWords.Count(off)} of {NumberWords.Count(calibration.Groups.Count)} groups {(off > 1 ? "are" : "is")} outside of the limits.");
    }
}
