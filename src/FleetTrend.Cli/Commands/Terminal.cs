using Spectre.Console;

namespace FleetTrend.Cli.Commands;

/// <summary>Where a command prints for people.</summary>
internal static class Terminal
{
    private const int WidthWithoutTerminal = 160;

    /// <summary>A console on a writer: colours and the window's width on a terminal, neither in a file or a pipe.</summary>
    public static IAnsiConsole On(TextWriter output)
    {
        var isTerminal = ReferenceEquals(output, Console.Out) && !Console.IsOutputRedirected;
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = isTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = isTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
        });
        if (!isTerminal)
            console.Profile.Width = WidthWithoutTerminal;
        return console;
    }
}
