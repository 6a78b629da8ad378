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
    public static string Subject(LookInterval interval) =>
        $"{(interval.Kind.Length > 0 ? interval.Kind : "all kinds of location")} on {(interval.TypeGroup.Length > 0 ? interval.TypeGroup : "all type groups")}";

    /// <summary>What a change changed, one line each; empty where nothing differs.</summary>
    public static IReadOnlyList<string> Changes(Wire before, Wire after)
    {
        var was = before.LookIntervals.ToDictionary(Subject, i => i.Hours, StringComparer.Ordinal);
        var now = after.LookIntervals.ToDictionary(Subject, i => i.Hours, StringComparer.Ordinal);
        return
        [
            .. ParameterNumbers.All.Where(n => n.In(before) != n.In(after))
                .Select(n => $"{n.Title}: {Plain(n.In(before))} to {Value(n, n.In(after))}"),
            .. now.Where(i => !was.ContainsKey(i.Key)).Select(i => $"Look interval of {i.Key}: {Plain(i.Value)} h of its own"),
            .. now.Where(i => was.TryGetValue(i.Key, out var hours) && hours != i.Value)
                .Select(i => $"Look interval of {i.Key}: {Plain(was[i.Key])} to {Plain(i.Value)} h"),
            .. was.Keys.Where(i => !now.ContainsKey(i)).Select(i => $"Look interval of {i}: no longer its own"),
        ];
    }
}
