namespace FleetTrend.Reports.Weekly;

/// <summary>What every report and page says, so that nobody takes a statistic for a permission.</summary>
public static class Cautions
{
    /// <summary>The short form, for the top.</summary>
    public const string Brief =
        "These statistics help you decide where to look. They never return an aircraft to service, and a low rate does not show that an aircraft is sound.";

    /// <summary>The full form, a sentence or two each, for the end.</summary>
    public static IReadOnlyList<string> Full { get; } =
    [
        "A trend is no inspection. What counts is what the person with the flashlight and the mirror finds on this aircraft.",
        "Nothing here returns an aircraft to service, lengthens an inspection interval or clears a finding. The instructions of the "
            + "aircraft's and the component's maker, airworthiness directives, the rules that apply to you, and the licensed person who signs decide.",
        "A low rate, a quiet week or an aircraft without a flag is no evidence that an aircraft is sound: perhaps nobody looked there, "
            + "or the records have not arrived.",
        "An exhaust leak can put carbon monoxide into the cabin and hot gas onto fuel lines and structure. A suspected leak is a matter "
            + "for now, not for next week's report.",
        "The norm is this fleet itself. If every aircraft here has the same trouble, none stands out.",
    ];
}
