using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends;

/// <summary>The choices behind a set of trends; stored with it, so that it can be made again. As they come they are the shipped defaults.</summary>
public sealed record TrendParameters
{
    /// <summary>Number of the change that set them; 0 for the shipped defaults. It says which these are and changes no figure.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public int Revision { get; init; }

    /// <summary>Confidence of every interval.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Bases are called at q-values up to this: the expected share of false alarms among calls this strong or stronger.</summary>
    public double FalseDiscoveryRate { get; init; } = 0.05;

    /// <summary>New false flags of aircraft and bases that get worse, per 50 aircraft-years, all classes of condition together.</summary>
    public double FlagsPer50AircraftYears { get; init; } = 1;

    /// <summary>New false watches, flags among them, per 50 aircraft-years, all classes of condition together.</summary>
    public double WatchesPer50AircraftYears { get; init; } = 5;

    /// <summary>A life distribution is fitted with at least this many failures.</summary>
    public int MinimumFailuresForFit { get; init; } = 3;

    /// <summary>Look interval, flight hours: a part that fails within its first so many hours fails early.</summary>
    public double LookIntervalHours { get; init; } = 100;

    /// <summary>Type groups and kinds of location with a look interval of their own.</summary>
    public IReadOnlyList<LookInterval> LookIntervals { get; init; } = [];

    /// <summary>Chance with which spares on the shelf are to cover what is needed.</summary>
    public double SpareServiceLevel { get; init; } = 0.95;

    /// <summary>Days ahead for which spares are foreseen first.</summary>
    public int SpareFirstHorizonDays { get; init; } = 30;

    /// <summary>The second number of days.</summary>
    public int SpareSecondHorizonDays { get; init; } = 90;

    /// <summary>The third number of days.</summary>
    public int SpareThirdHorizonDays { get; init; } = 180;

    /// <summary>What a failure in service costs, where a planned renewal costs one.</summary>
    public double FailureCostRatio { get; init; } = 5;

    /// <summary>Allowed chance that a part which was good at a look fails before the next: the longest look interval keeps it.</summary>
    public double UndetectedFailureChance { get; init; } = 0.05;

    /// <summary>Greatest renewal ages and look intervals of makers and regulations, as far as they have been told.</summary>
    public IReadOnlyList<MakerLimit> MakerLimits { get; init; } = [];

    /// <summary>The numbers of days for which spares are foreseen, ascending, each once.</summary>
    [JsonIgnore]
    public IReadOnlyList<int> SpareHorizonsDays => [.. new[] { SpareFirstHorizonDays, SpareSecondHorizonDays, SpareThirdHorizonDays }.Distinct().Order()];

    /// <summary>The look interval of a kind of location on a type group, flight hours: that of both, else of the kind, else of the type
    /// group, else the general one.</summary>
    public double LookIntervalHoursOf(string typeGroup, string kind) =>
        (LookIntervals.FirstOrDefault(i => i.TypeGroup == typeGroup && i.Kind == kind)
            ?? LookIntervals.FirstOrDefault(i => i.TypeGroup is null && i.Kind == kind)
            ?? LookIntervals.FirstOrDefault(i => i.TypeGroup == typeGroup && i.Kind is null))?.Hours
        ?? LookIntervalHours;

    /// <summary>The greatest renewal age of a kind of location on a type group that has been told, flight hours: that of both, else of the kind, else of
    /// the type group; null where none has.</summary>
    public double? GreatestRenewalHoursOf(string typeGroup, string kind) => LimitOf(typeGroup, kind, l => l.RenewalHours);

    /// <summary>The greatest look interval, likewise.</summary>
    public double? GreatestLookHoursOf(string typeGroup, string kind) => LimitOf(typeGroup, kind, l => l.LookHours);

    /// <summary>The same parameters as they hold for one kind of location on one type group.</summary>
    public TrendParameters For(string typeGroup, string kind) => this with { LookIntervalHours = LookIntervalHoursOf(typeGroup, kind), LookIntervals = [] };

    /// <summary>The parameters of a change as they are stored.</summary>
    /// <param name="json">Every parameter, as <see cref="ToJson"/> writes them; null for the shipped defaults. One that a later version has added
    /// takes its default.</param>
    /// <param name="revision">Number of the change.</param>
    /// <exception cref="JsonException">It holds no parameters.</exception>
    public static TrendParameters Read(string? json, int revision)
    {
        var parameters = json is null ? new TrendParameters() : JsonSerializer.Deserialize<TrendParameters>(json, TrendJson.Options);
        return parameters is null ? throw new JsonException("The JSON holds no parameters.") : parameters with { Revision = revision };
    }

    /// <summary>Every parameter as JSON, without the number of the change. The same parameters give the same text.</summary>
    public string ToJson() => JsonSerializer.Serialize(this with { Revision = 0 }, TrendJson.Options);

    private double? LimitOf(string typeGroup, string kind, Func<MakerLimit, double?> limit) => MakerLimits
        .Where(l => limit(l) is not null && (l.TypeGroup is null || l.TypeGroup == typeGroup) && (l.Kind is null || l.Kind == kind))
        .OrderBy(l => l.Kind is null).ThenBy(l => l.TypeGroup is null)
        .Select(limit).FirstOrDefault();
}
