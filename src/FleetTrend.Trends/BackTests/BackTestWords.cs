using System.Globalization;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;

namespace FleetTrend.Trends.BackTests;

/// <summary>How a back-test reads.</summary>
public static class BackTestWords
{
    /// <summary>What every back-test says beside its figures.</summary>
    public const string WhatItCannotTell =
        "Nobody's history tells which calls were right. A call is right or false only by what was found when someone looked.";

    /// <summary>What the replay knows that nobody knew then.</summary>
    public const string Hindsight =
        "Each week is judged by the findings and hours up to it. Three things come from today's records: how long like parts last, how much like aircraft "
        + "differ, and the limits. Closings and actions of flags are left out, as if nobody had answered.";

    /// <summary>What days of an alert level are.</summary>
    public const string Grain =
        "Watches and flags are looked for at the end of every week, in periods of four weeks as a refresh on that day cuts them; alert levels at the end of every "
        + "calendar month, by findings per 1,000 flight hours.";

    /// <summary>What both name.</summary>
    public const string Shared =
        "Two methods share a call where both called the same aircraft or base for the same condition on at least one day in common. "
        + "A unit is an aircraft, or a base as a whole; its group is the type group, itself among it.";

    /// <summary>What is counted: <c>cracks</c>, <c>failed gaskets</c>.</summary>
    public static string What(Condition? condition, string? kind) =>
        condition is { } counted ? ConditionWords.Many(counted) : $"failed {LocationWords.Plural(LocationWords.Kind(null, kind ?? ""))}";

    /// <summary>Who is called: the aircraft, or the base as a whole.</summary>
    public static string Who(BackTestCall call) => call.Registration ?? $"base {call.Base}";

    /// <summary>Where on it.</summary>
    public static string Where(BackTestCall call) =>
        call.Part is { Length: > 0 } part ? LocationWords.Name(part) : call.Registration is null ? "whole base" : "whole aircraft";

    /// <summary>Whether it still stands: the day it ended, or that it stands.</summary>
    public static string Ended(BackTestCall call) => call.EndedDate is { } day ? NumberWords.Day(day) : "stands";

    /// <summary>How often: <c>1.4</c> per 50 aircraft-years; where nothing was watched, that.</summary>
    public static string Per50(double? calls) => calls is { } known ? NumberWords.Rounded(known) : "nothing watched";

    /// <summary>A rate that was chosen, in full: <c>5</c>, <c>0.5</c>.</summary>
    public static string Allowed(double per50) => per50.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A share of calls with its count: <c>3 of 12 (25 %)</c>; nothing where there is none to share.</summary>
    public static string Share(int? shared, int of) =>
        shared is not { } count ? "" : of == 0 ? "none" : $"{NumberWords.Count(count)} of {NumberWords.Count(of)} ({NumberWords.Percent(count / (double)of)})";
}
