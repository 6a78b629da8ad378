using System.Diagnostics;

namespace FleetTrend.Cli.Tests.Analyze;

/// <summary>Bad input: file, line, column, value and rule on the error stream, exit code 2, nothing printed as a result.</summary>
public sealed class AnalyzeRefusalTests
{
    [Theory]
    [InlineData("life", "lower,upper\n100,90\n", 2, "upper", "90", "below lower")]
    [InlineData("life", "lower,upper\n\n100,x\n", 3, "upper", "x", "finite number")]
    [InlineData("life", "lower,upper\n-1,5\n", 2, "lower", "-1", "zero or more")]
    [InlineData("life", "lower,upper\nNaN,5\n", 2, "lower", "NaN", "finite number")]
    [InlineData("life", "lower,upper\n,5\n", 2, "lower", "", "a number")]
    [InlineData("life", "lower,upper,entry\n100,200,150\n", 2, "entry", "150", "not be above lower")]
    [InlineData("life", "lower,upper,count\n100,200,0\n", 2, "count", "0", "1 or more")]
    [InlineData("life", "lower,upper,count\n100,200,1.5\n", 2, "count", "1.5", "whole number")]
    [InlineData("life", "lower,upper\n0,0\n", 2, "upper", "0", "above entry")]
    [InlineData("life", "lower,uper\n100,200\n", 1, "uper", "uper", "one of the columns")]
    [InlineData("life", "upper\n100\n", 1, "lower", "", "a column of this file")]
    [InlineData("life", "lower,upper\n1,2,3\n", 2, "(last)", "3", "fields")]
    [InlineData("life", "", 1, "lower", "", "empty")]
    [InlineData("life", "lower,upper\n", 2, "lower", "", "rows below")]
    [InlineData("recurrence", "unit,time,what\nA,5,stop\n", 2, "what", "stop", "start, event or end")]
    [InlineData("recurrence", "unit,time,what\nA,5,event\nA,4,end\n", 2, "time", "5", "after a start")]
    [InlineData("recurrence", "unit,time,what\nA,0,event\nA,4,end\n", 2, "time", "0", "after a start")]
    [InlineData("recurrence", "unit,time,what\nA,5,event\n", 2, "unit", "A", "an end after")]
    [InlineData("recurrence", "unit,time,what\nA,5,end\nA,8,end\n", 3, "what", "end", "a start before")]
    [InlineData("recurrence", "unit,time,what\nA,5,start\nA,8,start\nA,9,end\n", 3, "what", "start", "before the end")]
    [InlineData("recurrence", "unit,time,what\n,5,end\n", 2, "unit", "", "not be empty")]
    [InlineData("rate", "unit,events,exposure\nA,1,10\nA,2,10\n", 3, "unit", "A", "once")]
    [InlineData("rate", "unit,events,exposure\nA,-1,10\n", 2, "events", "-1", "0 or more")]
    [InlineData("rate", "unit,events,exposure\nA,1,0\n", 2, "exposure", "0", "above zero")]
    [InlineData("rate", "unit,events,exposure\nA,2000000000,10\nB,2000000000,10\n", 3, "events", "2000000000", "2147483647")]
    [InlineData("rate", "unit,events,exposure\nA,1,Infinity\n", 2, "exposure", "Infinity", "finite")]
    [InlineData("rate", "unit,events,exposure\n\"A,1,10\n", 2, "(line)", "", "quote")]
    [InlineData("growth", "unit,start,stop,exposure,events\nA,5,5,10,1\n", 2, "stop", "5", "after the start")]
    [InlineData("growth", "unit,start,stop,exposure,events\nA,0,5,0,1\n", 2, "exposure", "0", "above zero")]
    [InlineData("growth", "unit,start,stop,exposure,events\nA,x,5,10,1\n", 2, "start", "x", "finite number")]
    public void A_bad_field_is_named_and_nothing_is_printed(string kind, string text, int line, string column, string value, string rule)
    {
        using var file = new AnalyzeFile(text);
        foreach (var json in (bool[])[false, true])
        {
            var (code, output, error) = file.Run(kind, json);
            Assert.Equal(2, code);
            Assert.Equal("", output);
            Assert.StartsWith($"{file.Path}, line {line}, column {column}: must ", error, StringComparison.Ordinal);
            Assert.EndsWith($"; got {(value.Length == 0 ? "nothing" : $"\"{value}\"")}", error.TrimEnd(), StringComparison.Ordinal);
            Assert.Contains(rule, error, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void All_bad_lines_are_told_at_once_up_to_twenty()
    {
        using var file = new AnalyzeFile("unit,events,exposure\n" + string.Concat(Enumerable.Range(0, 30).Select(i => $"u{i},x,1\n")));
        var lines = file.Run("rate").Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(21, lines.Length);
        Assert.Equal("and 10 more", lines[^1].TrimEnd());
    }

    [Theory]
    [InlineData(1.0, null)]
    [InlineData(0.95, "plot.png")]
    public void A_bad_option_is_refused(double confidence, string? plot)
    {
        using var file = new AnalyzeFile("unit,events,exposure\nA,1,10\n");
        var (code, output, error) = file.Run("rate", plot: plot, confidence: confidence);
        Assert.Equal((2, ""), (code, output));
        Assert.StartsWith("--", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plot_that_cannot_be_written_fails_without_a_result()
    {
        using var file = new AnalyzeFile("unit,events,exposure\nA,1,10\n");
        var (code, output, error) = file.Run("rate", plot: file.Beside("no/such/folder.svg"));
        Assert.Equal((1, ""), (code, output));
        Assert.Contains("could not be written", error, StringComparison.Ordinal);
    }

    [Theory] // The program itself: exit code and both streams.
    [InlineData("unit,events,exposure\nA,1,10\nB,0,20\n", 0)]
    [InlineData("unit,events,exposure\nA,one,10\n", 2)]
    public async Task The_program_ends_with_the_exit_code(string text, int code)
    {
        using var file = new AnalyzeFile(text);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var argument in (string[])[typeof(Commands.AnalyzeRateCommand).Assembly.Location, "analyze", "rate", file.Path, "--json"])
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(code, process.ExitCode);
        Assert.Equal(code == 0, (await output).Length > 0);
        Assert.Equal(code != 0, (await error).Length > 0);
    }
}
