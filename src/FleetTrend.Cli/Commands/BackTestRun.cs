using CsvHelper;
using FleetTrend.Cli.Analysis;
using FleetTrend.Cli.BackTests;
using FleetTrend.Reports.Plots;
using FleetTrend.Results.Observing;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Parameters;
using FleetTrend.Trends;
using FleetTrend.Trends.BackTests;
using Spectre.Console;

namespace FleetTrend.Cli.Commands;

/// <summary>Back-tests type groups as known now: tables for people, JSON for programs, files on request.</summary>
internal sealed class BackTestRun(
    Knowledge knowledge, TypeGroupReader typeGroups, ParameterStore parameters, TextWriter output, TextWriter error)
{
    /// <summary>Runs; nothing is printed where an option is refused.</summary>
    public async Task<int> RunAsync(BackTestSettings settings, CancellationToken ct)
    {
        if (settings.Problem() is { } problem)
            return await RefuseAsync(problem);
        var asOf = await knowledge.FixAsOfAsync(ct);
        if (settings.SinceDate > DateOnly.FromDateTime(asOf.UtcDateTime))
            return await RefuseAsync($"--since: must be no later than today, {asOf.UtcDateTime:yyyy-MM-dd}; got \"{settings.Since}\"");
        IReadOnlyList<string> names = [.. (await typeGroups.ReadSizesAsync(asOf, ct)).Select(g => g.Name)];
        if (settings.TypeGroup is { } wanted)
        {
            if (!names.Contains(wanted, StringComparer.Ordinal))
                return await RefuseAsync($"--type-group: must be a type group with aircraft ({(names.Count > 0 ? string.Join(", ", names) : "there is none")}); got \"{wanted}\"");
            names = [wanted];
        }

        if (settings.Plot is not null && names.Count != 1)
            return await RefuseAsync($"--type-group: must be given with --plot, as one of {string.Join(", ", names)}; got nothing");
        var tests = await TestAsync(settings, names, asOf, ct);
        if (!await HasWrittenAsync(settings, tests))
            return ExitCode.Failed;
        if (settings.Json)
        {
            await output.WriteLineAsync(JsonOutput.Write(new
            {
                AsOf = asOf,
                BackTestWords.WhatItCannotTell,
                TypeGroups = tests.Select(BackTestGroup.From),
            }));
            return ExitCode.Done;
        }

        var console = Terminal.On(output);
        if (tests.Count == 0)
            console.WriteLine("There are no aircraft yet.");
        foreach (var part in tests.SelectMany(BackTestTables.Compose))
        {
            console.Write(part);
            console.WriteLine();
        }

        if (tests.Count > 0)
            console.WriteLine(Words.Caution);
        return ExitCode.Done;
    }

    private async Task<IReadOnlyList<BackTest>> TestAsync(BackTestSettings settings, IReadOnlyList<string> names, DateTimeOffset asOf, CancellationToken ct)
    {
        var inForce = await parameters.ReadAsync(asOf, ct);
        var chosen = TrendParameters.Read(inForce.ValuesJson, inForce.Revision);
        if (settings.Json || !ReferenceEquals(output, Console.Out) || !AnsiConsole.Profile.Capabilities.Interactive)
            return await AllAsync(_ => { });
        return await AnsiConsole.Status().StartAsync("Reading", status => AllAsync(words => status.Status = words));

        async Task<IReadOnlyList<BackTest>> AllAsync(Action<string> tell)
        {
            var tests = new List<BackTest>();
            foreach (var name in names)
            {
                tell($"Reading {Markup.Escape(name)}");
                var inputs = await typeGroups.ReadAsync(asOf, name, chosen, keep: false, ct);
                tell($"Replaying {Markup.Escape(name)}");
                tests.Add(await Task.Run(() => BackTestReplay.Run(inputs, settings.SinceDate, settings.UntilDate), ct));
            }

            return tests;
        }
    }

    private async Task<bool> HasWrittenAsync(BackTestSettings settings, IReadOnlyList<BackTest> tests)
    {
        var path = "";
        try
        {
            if ((path = settings.Csv) is not null)
                WriteCsv(path, tests);
            if ((path = settings.Plot) is not null)
                await File.WriteAllTextAsync(path, new BackTestPlot(tests[0]).RenderSvg());
            return true;
        }
        catch (Exception unwritable) when (unwritable is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync($"{path}: must be a file that can be written: {unwritable.Message}");
            return false;
        }
    }

    private static void WriteCsv(string path, IReadOnlyList<BackTest> tests)
    {
        using var writer = CsvWriter.ToFile(path, CsvWriterOptions.Default, default);
        writer.WriteRecord([.. BackTestRow.Columns]);
        foreach (var call in tests.SelectMany(t => t.Calls.Concat(t.AlertCalls)))
            writer.WriteRecord(BackTestRow.From(call).Cells());
    }

    private async Task<int> RefuseAsync(string problem)
    {
        await error.WriteLineAsync(problem);
        return ExitCode.BadInput;
    }
}
