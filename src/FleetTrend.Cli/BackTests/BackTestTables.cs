using FleetTrend.Cli.Analysis;
using FleetTrend.Records.Words;
using FleetTrend.Trends.BackTests;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.BackTests;

/// <summary>A back-test as tables and lines, in reading order.</summary>
internal static class BackTestTables
{
    /// <summary>The calls, then how often each method calls, then what is behind it.</summary>
    public static IEnumerable<IRenderable> Compose(BackTest test)
    {
        yield return test.Calls.Count > 0 ? Calls(test) : new Text($"{test.TypeGroup}: no watch or flag would have come, {NumberWords.Period(test.FirstDate, test.LastDate)}.");
        yield return Methods(test);
        foreach (var method in test.Methods)
            yield return new Text($"{method.Title}: {method.Description} Source: {method.Source}.");
        yield return new Text(
            $"{NumberWords.Rounded(test.AircraftYears)} aircraft-years between first and last look, {NumberWords.Period(test.FirstDate, test.LastDate)}. "
            + $"{BackTestWords.Grain} {BackTestWords.Hindsight} {BackTestWords.Shared}");
        yield return new Text(BackTestWords.WhatItCannotTell);
    }

    private static Table Calls(BackTest test)
    {
        var table = Words.Table($"Watches and flags of {test.TypeGroup} as they would have come, newest first", "day", "who", "what", "call", "where", "times", "ended");
        foreach (var call in test.Calls)
        {
            table.Row(
                NumberWords.Day(call.Date), BackTestWords.Who(call), BackTestWords.What(call.Condition, call.Kind), call.Method, BackTestWords.Where(call),
                NumberWords.Rounded(call.Ratio!.Value), BackTestWords.Ended(call));
        }

        return table;
    }

    private static Table Methods(BackTest test)
    {
        var flags = test.Methods.First(m => m.Name == BackTestMethod.Flag).Calls;
        var watches = test.Methods.First(m => m.Name == BackTestMethod.Watch).Calls;
        var table = Words.Table(
            $"How often each method calls on {test.TypeGroup}", "method", "of aircraft", "of bases", "per 50 aircraft-years", "also watched or flagged", "of the flags",
            "of the watches");
        foreach (var method in test.Methods)
        {
            table.Row(
                method.Title, NumberWords.Count(method.AircraftCalls), NumberWords.Count(method.BaseCalls), BackTestWords.Per50(method.Per50AircraftYears),
                BackTestWords.Share(method.AlsoWatchedOrFlagged, method.Calls), BackTestWords.Share(method.FlagsNamed, flags),
                BackTestWords.Share(method.WatchesNamed, watches));
        }

        return table;
    }
}
