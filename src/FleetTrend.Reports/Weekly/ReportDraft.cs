using FleetTrend.Records.Findings;
using FleetTrend.Records.Schedules;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Trends;
using FleetTrend.Trends.Fleet;
using FleetTrend.Trends.Silence;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>What the sections of one report have in common while it is composed.</summary>
internal sealed class ReportDraft
{
    private readonly HashSet<string> typeGroups;
    private readonly List<ReportPlot> plots = [];

    public ReportDraft(TrendSnapshot current, TrendSnapshot? previous, ReportInputs inputs)
    {
        Current = current;
        Previous = previous;
        Inputs = inputs;
        var scope = inputs.Scope;
        Flags = [.. FlagOrder.Sort(inputs.Flags.Where(f => scope.Covers(f.Flag.Base) && (scope.TypeGroup ?? f.Flag.TypeGroup) == f.Flag.TypeGroup))];
        Fleet = [.. current.Fleet.Where(l => l.RetiredDate is null && inputs.Scope.Covers(l.Base))];
        typeGroups = Fleet.Select(l => l.TypeGroup).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>What sections of a page have in common: the whole fleet as it is now, without news.</summary>
    public static ReportDraft OfPage(TrendSnapshot snapshot, IReadOnlyList<FlagLine>? flags = null, Uri? pages = null)
    {
        var today = DateOnly.FromDateTime(snapshot.AsOf.UtcDateTime);
        return new ReportDraft(snapshot, null, new ReportInputs
        {
            Scope = ReportScope.WholeFleet,
            Period = new ReportPeriod(today, today),
            Flags = flags ?? [],
            PagesUrl = pages,
        });
    }

    public TrendSnapshot Current { get; }

    public TrendSnapshot? Previous { get; }

    public ReportInputs Inputs { get; }

    public ReportScope Scope => Inputs.Scope;

    /// <summary>Flags in scope, most pressing first.</summary>
    public IReadOnlyList<FlagLine> Flags { get; }

    /// <summary>Aircraft in scope that fly.</summary>
    public IReadOnlyList<FleetLine> Fleet { get; }

    /// <summary>Aircraft in scope of which nothing comes any more, the longest silent first.</summary>
    public IReadOnlyList<AircraftSilence> Silences => [.. Current.Silences.Where(s => Scope.Covers(s.Base))];

    public MethodList Methods { get; } = new();

    /// <summary>The methods of the figures so far, by number; none where there are no figures.</summary>
    public IEnumerable<Block> MethodBlocks() => Methods.Names.Count == 0
        ? []
        : [new Block.SubHeading("Methods"), new Block.Bullets([.. Methods.Names.Select((name, i) => (Line)$"[{i + 1}] {name}")])];

    /// <summary>The plots that sections have shown, in order.</summary>
    public IReadOnlyList<ReportPlot> Plots => plots;

    /// <summary>The words that close every caption.</summary>
    public string AsOf => $"as of {NumberWords.Moment(Current.AsOf)}";

    /// <summary>Whether an aircraft in scope is of this type group.</summary>
    public bool HasTypeGroup(string name) => typeGroups.Contains(name);

    /// <summary>A figure as a piece of a line.</summary>
    public Run Number(Figure figure, FigureStyle style) => new Run.Number(figure, style, Methods.NumberOf(figure.Method));

    /// <summary>A figure as a cell of a table.</summary>
    public Line Cell(Figure figure, FigureStyle style) => Line.Join(Number(figure, style));

    /// <summary>A plot as a block; it goes with the report.</summary>
    public Block.Picture Show(ReportPlot plot)
    {
        plots.Add(plot);
        return new Block.Picture(plot.PngName, plot.AltText, plot.Caption, ReportPlot.Width, plot.Height);
    }

    /// <summary>Where the rows behind a number can be read, or null where there are no pages.</summary>
    public Uri? Evidence(string? registration, string? typeGroup, string? location, string? kind, Condition? condition)
    {
        if (Inputs.PagesUrl is null) return null;
        List<(string Name, string Value)> query = [];
        if (registration is not null) query.Add(("registration", registration));
        if (typeGroup is not null) query.Add(("typeGroup", typeGroup));
        if (location is not null) query.Add(("location", location));
        if (kind is not null) query.Add(("kind", kind));
        if (condition is { } c) query.Add(("condition", ProtoName(c)));
        query.Add(("asOfTime", Current.AsOf.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'")));
        var text = string.Join('&', query.Select(p => $"{p.Name}={Uri.EscapeDataString(p.Value)}"));
        return new Uri(Inputs.PagesUrl, "v1/trends/evidence?" + text);
    }

    private static string ProtoName(Condition condition) => condition switch
    {
        Condition.LeakTrace => "CONDITION_LEAK_TRACE",
        Condition.MissingPiece => "CONDITION_MISSING_PIECE",
        _ => "CONDITION_" + condition.ToString().ToUpperInvariant(),
    };
}
