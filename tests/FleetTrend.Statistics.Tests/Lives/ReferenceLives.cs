using System.Globalization;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Reads the columns lower, upper, entry and count of a reference case; an empty upper is infinite.</summary>
internal static class ReferenceLives
{
    public static Life[] Lives(this ReferenceCase source, Func<int, bool>? include = null)
    {
        var (lower, upper, entry, count) =
            (source.Text("lower"), source.Text("upper"), source.Text("entry"), source.Text("count"));
        return
        [
            .. Enumerable.Range(0, lower.Length).Where(i => include is null || include(i)).Select(
                i => new Life(Number(lower[i]), Number(upper[i]), Number(entry[i]), (int)Number(count[i]))),
        ];
    }

    private static double Number(string text) =>
        text.Length == 0 ? double.PositiveInfinity : double.Parse(text, CultureInfo.InvariantCulture);
}
