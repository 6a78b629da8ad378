using System.Text.Json.Serialization;
using FleetTrend.Statistics;

namespace FleetTrend.Trends.Spares;

/// <summary>How many spares of a part number, or of a kind of part of which no number is known, a base will need.</summary>
public sealed record SpareNeed
{
    /// <summary>The type groups that have such parts in service there.</summary>
    public required IReadOnlyList<string> TypeGroups { get; init; }

    /// <summary>Kinds of the part; more than one only where a part number goes in at several.</summary>
    public required IReadOnlyList<string> Kinds { get; init; }

    /// <summary>Titles of those kinds.</summary>
    public required IReadOnlyList<string> KindTitles { get; init; }

    /// <summary>The base where the aircraft are.</summary>
    public required string Base { get; init; }

    /// <summary>The part number; null where none is known.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Parts in service that the forecast counts.</summary>
    public required int Parts { get; init; }

    /// <summary>Parts in service of unknown age, or whose aircraft flies a pace that is not known.</summary>
    public required int AgeUnknown { get; init; }

    /// <summary>Parts in service of a kind that has failed too seldom for a life distribution.</summary>
    public required int TooFewFailures { get; init; }

    /// <summary>Parts that were found failed and wait for a replacement: each needs one for certain.</summary>
    public required int Waiting { get; init; }

    /// <summary>Such parts that went in there within the last 365 days.</summary>
    public required int UsedInYear { get; init; }

    /// <summary>Failures in the fitted life distributions behind the forecast.</summary>
    public required int Failures { get; init; }

    /// <summary>Parts that a failure takes, in the mean: above one where sisters go out with it, below where it is repaired.</summary>
    public required double PartsPerFailure { get; init; }

    /// <summary>The forecast by days ahead, ascending; empty where there is none.</summary>
    public required IReadOnlyList<SpareHorizon> Horizons { get; init; }

    /// <summary>The chance with which stock is to cover what is needed.</summary>
    public required double ServiceLevel { get; init; }

    /// <summary>Confidence of the prediction intervals.</summary>
    public required double Confidence { get; init; }

    /// <summary>What is on the shelf; null where not told.</summary>
    public SpareStock? Stock { get; init; }

    /// <summary>The first horizon within which the stock falls short, with the number missing; null where it is enough, or not known.</summary>
    [JsonIgnore]
    public (SpareHorizon Horizon, int Missing)? Shortage
    {
        get
        {
            foreach (var horizon in Stock is null ? [] : Horizons)
            {
                if (Needed(horizon) - Stock!.OnHand is > 0 and var missing)
                    return (horizon, missing);
            }

            return null;
        }
    }

    /// <summary>
    /// Days within which an order must be given so that it comes before the stock may fall short, 0 for now: the last horizon that the stock covers, less the
    /// lead time. Null where it does not fall short, or the lead time is not told.
    /// </summary>
    [JsonIgnore]
    public int? OrderWithinDays => Shortage is { } shortage && Stock?.LeadTimeDays is { } lead
        ? Math.Max(0, Horizons.Where(h => h.Days < shortage.Horizon.Days).Select(h => h.Days).DefaultIfEmpty(0).Max() - lead)
        : null;

    /// <summary>The stock that covers a horizon with the service level.</summary>
    public int Needed(SpareHorizon horizon)
    {
        ArgumentNullException.ThrowIfNull(horizon);
        return horizon.Forecast.Stock(ServiceLevel).Stock;
    }

    /// <summary>Prediction interval of a horizon, whole parts, both ends included.</summary>
    public Interval IntervalOf(SpareHorizon horizon)
    {
        ArgumentNullException.ThrowIfNull(horizon);
        return horizon.Forecast.Interval(Confidence);
    }

    /// <summary>What two type groups need of one part number at one base, together; they are independent.</summary>
    internal SpareNeed With(SpareNeed other) => this with
    {
        TypeGroups = [.. TypeGroups.Union(other.TypeGroups, StringComparer.Ordinal)],
        Kinds = [.. Kinds.Union(other.Kinds, StringComparer.Ordinal)],
        KindTitles = [.. KindTitles.Union(other.KindTitles, StringComparer.Ordinal)],
        Parts = Parts + other.Parts,
        AgeUnknown = AgeUnknown + other.AgeUnknown,
        TooFewFailures = TooFewFailures + other.TooFewFailures,
        Waiting = Waiting + other.Waiting,
        UsedInYear = UsedInYear + other.UsedInYear,
        Failures = Failures + other.Failures,
        PartsPerFailure = Parts + other.Parts == 0 ? PartsPerFailure : (Parts * PartsPerFailure + other.Parts * other.PartsPerFailure) / (Parts + other.Parts),
        Horizons = Horizons.Count == 0 ? other.Horizons : other.Horizons.Count == 0 ? Horizons
            : [.. Horizons.Zip(other.Horizons, (a, b) => SpareHorizon.From(a.Days, a.Forecast.Plus(b.Forecast)))],
        Stock = Stock is null || other.Stock is null ? Stock ?? other.Stock : Stock with { UsedSince = Stock.UsedSince + other.Stock.UsedSince },
    };
}
