using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Trends.Positions;

/// <summary>Where on the engine a condition is found at one kind of location: by cylinder, or by side, each beside the others of the same aircraft.</summary>
public sealed record PositionTrend
{
    private const string Method =
        "within aircraft (Mantel and Haenszel 1959); limits on the logarithm with aircraft as clusters, each beside the ratio of the others, Student's t (Mancl "
        + "and DeRouen 2001)";

    /// <summary>The type groups, by name: those in which the kind is at the same positions stand together.</summary>
    public required IReadOnlyList<string> TypeGroups { get; init; }

    /// <summary>Name of the kind of location.</summary>
    public required string Kind { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Whether cylinders or sides are compared.</summary>
    public required PositionSort Sort { get; init; }

    /// <summary>Aircraft watched there.</summary>
    public required int Aircraft { get; init; }

    /// <summary>Confidence of the limits.</summary>
    public required double Confidence { get; init; }

    /// <summary>Each position, in order.</summary>
    public required IReadOnlyList<PositionLine> Positions { get; init; }

    /// <summary>Aircraft that had a finding there: what type groups are put together from.</summary>
    public required IReadOnlyList<AircraftAtPositions> WithFindings { get; init; }

    /// <summary>What type groups must share to stand together: kind, condition and positions.</summary>
    internal (string Kind, Condition Condition, PositionSort Sort, string Positions) Key =>
        (Kind, Condition, Sort, string.Join(' ', Positions.Select(p => p.Name)));

    /// <summary>Puts another type group beside it, and compares again.</summary>
    internal PositionTrend With(PositionTrend other) => (this with
    {
        TypeGroups = [.. TypeGroups.Concat(other.TypeGroups).Order(StringComparer.Ordinal)],
        Aircraft = Aircraft + other.Aircraft,
        WithFindings = [.. WithFindings, .. other.WithFindings],
        Positions =
        [
            .. Positions.Zip(other.Positions, (a, b) => a with
            {
                Findings = a.Findings + b.Findings,
                ExposureHours = a.ExposureHours + b.ExposureHours,
                Aircraft = a.Aircraft + b.Aircraft,
            }),
        ],
    }).Compare();

    /// <summary>Compares each position with the others; of two, the one with the higher rate.</summary>
    internal PositionTrend Compare()
    {
        var contrasts = PositionContrast.Estimate([.. WithFindings.Select(a => a.ToUnit())], Confidence);
        var isOther = Positions.Count == 2 && contrasts is [{ } first, { } second] ? first.Ratio >= second.Ratio ? 1 : 0 : -1;
        return this with { Positions = [.. Positions.Select((line, i) => i == isOther ? Clear(line) : Describe(line, contrasts[i]))] };
    }

    /// <summary>Settles what the comparisons found, allowing for all of them together.</summary>
    /// <param name="adjusted">The p-value after allowing for all comparisons, by p-value.</param>
    internal PositionTrend Settle(IReadOnlyDictionary<double, double> adjusted) => this with
    {
        Positions =
        [
            .. Positions.Select(line => line.PValue is not { } p ? line : line with
            {
                AdjustedPValue = adjusted[p],
                Finding = adjusted[p] >= 1 - Confidence ? PositionFinding.NoneShown
                    : line.TimesOthers!.Value is < 1 ? PositionFinding.LessOften
                    : PositionFinding.MoreOften,
            }),
        ],
    };

    private static PositionLine Clear(PositionLine line) =>
        line with { TimesOthers = null, PValue = null, AdjustedPValue = null, Finding = PositionFinding.TooFew };

    private PositionLine Describe(PositionLine line, PositionContrast? contrast) => contrast is null ? Clear(line) : line with
    {
        TimesOthers = new Figure
        {
            Value = Figures.Finite(contrast.Ratio),
            Lower = contrast.Interval.Lower > 0 ? contrast.Interval.Lower : null,
            Upper = Figures.Finite(contrast.Interval.Upper),
            Confidence = Confidence,
            Unit = "",
            Events = contrast.Events + contrast.OtherEvents,
            ExposureHours = Positions.Sum(p => p.ExposureHours),
            Method = Method,
            NotEnoughData = double.IsFinite(contrast.Ratio) ? null : Figures.OthersHadNone,
        },
        // What its few findings could never call is not tested, and takes nothing from the others (Tarone 1990).
        PValue = contrast.SmallestPValue <= 1 - Confidence ? contrast.PValue : null,
        AdjustedPValue = null,
        Finding = PositionFinding.TooFew,
    };
}
