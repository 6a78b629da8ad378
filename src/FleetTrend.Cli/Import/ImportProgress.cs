using FleetTrend.Client;
using Spectre.Console;

namespace FleetTrend.Cli.Import;

/// <summary>A bar on a terminal; elsewhere only breaks are told.</summary>
internal sealed class ImportProgress(bool quiet, TextWriter error) : IProgress<int>, IProgress<Interruption>
{
    private const string Title = "Pushing";

    private ProgressTask? bar;

    /// <summary>Shows the bar while the work goes on.</summary>
    public async Task ShowAsync(int all, Func<Task> work)
    {
        if (quiet || !AnsiConsole.Profile.Capabilities.Interactive)
        {
            await work();
            return;
        }

        await AnsiConsole.Progress().Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .StartAsync(async progress =>
            {
                bar = progress.AddTask(Title, maxValue: Math.Max(1, all));
                await work();
                bar.Value = bar.MaxValue;
            });
    }

    /// <inheritdoc/>
    public void Report(int value)
    {
        if (bar is null)
            return;
        bar.Value = value;
        bar.Description = Title;
    }

    /// <inheritdoc/>
    public void Report(Interruption value)
    {
        var words = $"{value.Cause.StatusCode}, again in {value.Pause.TotalSeconds:0.0} s";
        if (bar is not null)
            bar.Description = Markup.Escape(words);
        else
            error.WriteLine($"{value.Cause.StatusCode}: {value.Cause.Detail} Again in {value.Pause.TotalSeconds:0.0} s.");
    }
}
