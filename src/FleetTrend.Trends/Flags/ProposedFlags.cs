using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Flags;

/// <summary>What deserves attention by the numbers of all type groups, each thing once.</summary>
public static class ProposedFlags
{
    /// <summary>Flags of a fleet: what gets worse, strongest first, then bases where parts fail sooner than elsewhere.</summary>
    /// <param name="candidates">What each type group has, by type group.</param>
    /// <param name="parameters">The choices.</param>
    /// <param name="kinds">Every kind that stands in them, by name.</param>
    /// <param name="closings">The newest closing of each flag.</param>
    public static IReadOnlyList<ProposedFlag> Propose(
        IReadOnlyList<FlagCandidates> candidates, TrendParameters parameters, IReadOnlyDictionary<string, LocationKind> kinds,
        IReadOnlyList<FlagClosing> closings)
    {
        var restarts = FlagRestarts.At(closings);
        var bases = Bases(candidates, parameters, kinds);
        var lives = bases.ToDictionary(b => b.Subject, StringComparer.Ordinal);
        List<ProposedFlag> changes = [.. Analyses.Changes.Order(candidates.SelectMany(c => c.Changes)).Select(c => ChangeFlag.Propose(c, kinds))];
        var both = changes.Where(c => lives.ContainsKey(c.Subject)).ToDictionary(c => c.Subject, StringComparer.Ordinal);
        return
        [
            .. changes.Where(c => !both.ContainsKey(c.Subject))
                .Concat(bases.Select(b => both.TryGetValue(b.Subject, out var change) ? BaseLifeFlag.With(b, change) : b))
                .Select(f => AfterClosing(f, restarts)),
        ];
    }

    private static List<ProposedFlag> Bases(
        IReadOnlyList<FlagCandidates> candidates, TrendParameters parameters, IReadOnlyDictionary<string, LocationKind> kinds)
    {
        var tests = new TestFamily(candidates.Select(c => c.BaseTests));
        return
        [
            .. candidates.SelectMany(c => c.PartLives)
                .Select(t => t with { Contrast = BaseContrasts.Settle(t.Contrast!, tests, parameters) })
                .Where(t => t.Contrast!.IsWorse)
                .OrderBy(t => t.Contrast!.Worst!.QValue).ThenBy(t => t.TypeGroup, StringComparer.Ordinal)
                .ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Base, StringComparer.Ordinal)
                .Select(t => BaseLifeFlag.Propose(t, kinds[t.Kind], tests.Count)),
        ];
    }

    /// <summary>The flag, saying from when on it counts where flags were closed before it.</summary>
    private static ProposedFlag AfterClosing(ProposedFlag flag, FlagRestarts restarts)
    {
        if (!restarts.Any)
            return flag;
        var own = restarts.Find(flag.Subject);
        if (flag is { Registration: { } registration, Condition: { } condition })
        {
            var counted = Counted(flag, registration, condition, own, restarts);
            return flag with { CountedAfterDate = own, Statement = string.Join(' ', [flag.Statement, .. counted]) };
        }

        if (own is not { } closed)
            return flag;
        var what = flag.Kind == FlagKind.BasePartLife ? "are parts that went in" : "is what came";
        return flag with { CountedAfterDate = closed, Statement = $"{flag.Statement} Counted {what} after {NumberWords.Day(closed)}, when this was last dealt with." };
    }

    private static IEnumerable<string> Counted(ProposedFlag flag, string registration, Condition condition, DateOnly? own, FlagRestarts restarts) =>
        flag.Locations
            .Select(l => (Location: l, Day: restarts.DayOf(registration, l, condition)))
            .Where(s => s.Day is not null)
            .GroupBy(s => s.Day!.Value).OrderBy(g => g.Key)
            .Select(g => g.Key == own
                ? $"Counted is what came after {NumberWords.Day(g.Key)}, when this was last dealt with."
                : $"At {string.Join(", ", g.Select(s => LocationWords.Name(s.Location)))} only what came after {NumberWords.Day(g.Key)} counts, when that location was last dealt with.");
}
