using System.Globalization;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Parameters;
using Wire = FleetTrend.Contracts.V1.Parameters;

namespace FleetTrend.Api.Pages.Parameters;

/// <summary>Parameters in words.</summary>
internal static class ParameterWords
{
    /// <summary>A value as it is shown, and as it is typed: <c>0.95</c>, <c>100</c>; empty where it is absent.</summary>
    public static string Plain(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    /// <summary>A value with its unit.</summary>
    public static string Value(ParameterNumber number, double? value) => number.IsHours ? $"{Plain(value)} h" : Plain(value);

    /// <summary>What a look interval is about: <c>gasket on trainer-four</c>.</summary>
    public static string Subject(LookInterval interval) => Subject(interval.TypeGroup, interval.Kind);

    /// <summary>What a maker's limit is about, likewise.</summary>
    public static string Subject(MakerLimit limit) => Subject(limit.TypeGroup, limit.Kind);

    /// <summary>A maker's limit: <c>renewal at 1000 h, look every 100 h</c>.</summary>
    public static string Value(MakerLimit limit) => (limit.HasRenewalHours, limit.HasLookHours) switch
    {
        (true, true) => $"renewal at {Plain(limit.RenewalHours)} h, look every {Plain(limit.LookHours)} h",
        (true, false) => $"renewal at {Plain(limit.RenewalHours)} h",
        _ => $"look every {Plain(limit.LookHours)} h",
    };

    /// <summary>What a change changed, one line each; empty where nothing differs.</summary>
    public static IReadOnlyList<string> Changes(Wire before, Wire after)
    {
        var was = before.LookIntervals.ToDictionary(Subject, i => i.Hours, StringComparer.Ordinal);
        var now = after.LookIntervals.ToDictionary(Subject, i => i.Hours, StringComparer.Ordinal);
        var limitsBefore = before.MakerLimits.ToDictionary(Subject, Value, StringComparer.Ordinal);
        var limitsAfter = after.MakerLimits.ToDictionary(Subject, Value, StringComparer.Ordinal);
        return
        [
            .. ParameterNumbers.All.Where(n => n.In(before) != n.In(after))
                .Select(n => $"{n.Title}: {Plain(n.In(before))} to {Value(n, n.In(after))}"),
            .. now.Where(i => !was.ContainsKey(i.Key)).Select(i => $"Look interval of {i.Key}: {Plain(i.Value)} h of its own"),
            .. now.Where(i => was.TryGetValue(i.Key, out var hours) && hours != i.Value)
                .Select(i => $"Look interval of {i.Key}: {Plain(was[i.Key])} to {Plain(i.Value)} h"),
            .. was.Keys.Where(i => !now.ContainsKey(i)).Select(i => $"Look interval of {i}: no longer its own"),
            .. limitsAfter.Where(l => !limitsBefore.ContainsKey(l.Key)).Select(l => $"Maker's limit of {l.Key}: {l.Value}"),
            .. limitsAfter.Where(l => limitsBefore.TryGetValue(l.Key, out var limit) && limit != l.Value)
                .Select(l => $"Maker's limit of {l.Key}: {limitsBefore[l.Key]} to {l.Value}"),
            .. limitsBefore.Keys.Where(l => !limitsAfter.ContainsKey(l)).Select(l => $"Maker's limit of {l}: no longer told"),
        ];
    }

    private static string Subject(string typeGroup, string kind) =>
        $"{(kind.Length > 0 ? kind : "all kinds of location")} on {(typeGroup.Length > 0 ? typeGroup : "all type groups")}";
}
