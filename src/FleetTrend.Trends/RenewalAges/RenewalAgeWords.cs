using FleetTrend.Records.Words;

namespace FleetTrend.Trends.RenewalAges;

/// <summary>How renewal ages and look intervals read.</summary>
public static class RenewalAgeWords
{
    /// <summary>What decides, for every list of them.</summary>
    public const string Caution =
        "These ages and intervals support a decision. The maker's instructions, airworthiness directives and the licensed person who signs decide: where they ask for an "
        + "earlier renewal or look, that holds.";

    /// <summary>What the numbers assume, for every list of them.</summary>
    public const string Assumptions =
        "They assume that parts to come last as those before, that age alone wears them (Weibull law), that a part is renewed when it fails or at the age, whichever comes "
        + "first, that a look finds every failure, and that costs stay in the ratio that is set.";

    /// <summary>The verdict in sentences: when to renew, what the maker allows, how often to look.</summary>
    public static string Statement(RenewalAge age)
    {
        ArgumentNullException.ThrowIfNull(age);
        return string.Join(' ', new[] { $"{Subject(age)}: {Renewal(age)}", Maker(age), Looks(age) }.Where(s => s.Length > 0));
    }

    /// <summary>Kind, type group and base: <c>Exhaust gaskets, trainer-four</c>.</summary>
    public static string Subject(RenewalAge age)
    {
        ArgumentNullException.ThrowIfNull(age);
        var kind = FirstLetter.Capital(LocationWords.Plural(LocationWords.Kind(age.Title, age.Kind)));
        return age.Base is { } atBase ? $"{kind}, {age.TypeGroup} at {atBase}" : $"{kind}, {age.TypeGroup}";
    }

    /// <summary>Whether to renew by age, and when; whole sentences.</summary>
    public static string Renewal(RenewalAge age)
    {
        ArgumentNullException.ThrowIfNull(age);
        return age.Finding switch
        {
            RenewalFinding.Renew => $"renewing a good one at {NumberWords.Hours(age.AgeHours!.Value)} {Saves(age)}",
            RenewalFinding.DoesNotWearOut => age.Shape!.Upper <= 1
                ? "renewal by age does not help: it does not wear out. A new one fails sooner than an old one; look at how it is fitted."
                : $"renewal by age does not help: it does not wear out. At best it would save less than {NumberWords.Percent(RenewalAgeAnalysis.LeastWorthwhile)} of the cost.",
            RenewalFinding.NotShown => NotShown(age),
            _ => $"{age.NotEnoughData ?? "not enough data"}. More failures, found on more than one aircraft, would tell.",
        };
    }

    /// <summary>What the maker or the regulation says of the age; empty where nothing needs saying.</summary>
    public static string Maker(RenewalAge age)
    {
        ArgumentNullException.ThrowIfNull(age);
        return (age.MakerRenewalHours, age.Finding) switch
        {
            ({ } limit, RenewalFinding.Renew) when limit <= age.AgeHours =>
                age.CheapestAge?.Value > limit
                    ? $"That is the maker's or the regulation's limit; by the costs alone it would be {NumberWords.Hours(age.CheapestAge.Value.Value)}."
                    : "That is the maker's or the regulation's limit too.",
            ({ } limit, RenewalFinding.Renew) => $"The maker's or the regulation's limit, {NumberWords.Hours(limit)}, is later.",
            ({ } limit, _) => $"The maker's or the regulation's limit, {NumberWords.Hours(limit)}, holds all the same.",
            (null, RenewalFinding.Renew) => "No limit of the maker has been told: look it up before using this age.",
            _ => "",
        };
    }

    /// <summary>How often to look; empty where nothing is known.</summary>
    public static string Looks(RenewalAge age)
    {
        ArgumentNullException.ThrowIfNull(age);
        if (age is not { LongestLook.Value: { } longest, LookHours: { } hours, LookedAtUntilHours: { } until })
            return "";
        var allowed = NumberWords.PercentInFull(age.AllowedChance);
        var first = hours < longest
            ? $"Look every {NumberWords.Hours(hours)} at most, the maker's or the regulation's limit; the allowed chance would leave {NumberWords.Hours(longest)}."
            : $"Look every {NumberWords.Hours(hours)} at most, and no more than {allowed} of good ones fail before the next look, up to an age of {NumberWords.Hours(until)}"
                + (age.LongestLook.Lower is { } sure && sure < hours ? $"; to be sure of it, every {NumberWords.Hours(sure)}." : ".");
        var set = age.ChanceAtSet?.Value is { } chance && age.SetLookHours > hours
            ? $" The interval set now is {NumberWords.Hours(age.SetLookHours)}, in which up to {NumberWords.Percent(chance)} fail."
            : "";
        return first + set + (age.MakerLookHours is null ? " No greatest look interval of the maker has been told: look it up." : "");
    }

    private static string Saves(RenewalAge age)
    {
        var saved = age.Saved!;
        var cost = $"if a failure in service costs {NumberWords.Rounded(age.CostRatio)} times a planned renewal";
        return saved.Value > 0
            ? $"saves about {NumberWords.Percent(saved.Value.Value)} of what running to failure costs, {cost}."
            : $"costs more than running to failure, {cost}.";
    }

    private static string NotShown(RenewalAge age)
    {
        if (age.FailuresToTell is { } needed)
        {
            return $"whether it wears out is not shown by {NumberWords.Count(age.Failures, "failure", "failures")}, so that no age is told. Some {NumberWords.Count(needed)} would "
                + "tell, if it goes on as so far.";
        }

        if (age.Shape?.Value is { } shape && shape <= 1)
            return $"whether it wears out is not shown by {NumberWords.Count(age.Failures, "failure", "failures")}; so far old ones have failed no sooner than new ones. More would tell.";
        return age.CheapestAge?.NotEnoughData is { } reason
            ? $"no age is told: it would lie outside of what was watched ({reason})."
            : "what an age saves is not shown yet, so that none is told. More failures would tell.";
    }
}
