using System.Globalization;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Scores;

/// <summary>A quarter of a calendar year (UTC).</summary>
/// <param name="StartDate">Its first day.</param>
public readonly record struct Quarter(DateOnly StartDate)
{
    private const int Months = 3;

    /// <summary>Its last day.</summary>
    [JsonIgnore]
    public DateOnly EndDate => StartDate.AddMonths(Months).AddDays(-1);

    /// <summary>The one before.</summary>
    [JsonIgnore]
    public Quarter Previous => new(StartDate.AddMonths(-Months));

    /// <summary>The one after.</summary>
    [JsonIgnore]
    public Quarter Next => new(StartDate.AddMonths(Months));

    /// <summary>The quarter of a day.</summary>
    public static Quarter Of(DateOnly day) => new(new DateOnly(day.Year, day.Month - (day.Month - 1) % Months, 1));

    /// <summary>As people write it, such as <c>Jul to Sep 2026</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{StartDate:MMM} to {EndDate:MMM yyyy}");
}
