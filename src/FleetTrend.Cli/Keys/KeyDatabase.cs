using FleetTrend.Cli.Databases;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.Cli.Keys;

/// <summary>The keys of the database that the servers use, at the command line.</summary>
internal static class KeyDatabase
{
    /// <summary>Opens it and does the work; what goes wrong is said on standard error.</summary>
    /// <param name="arguments">Settings as <c>--NAME=value</c>; they come before those of the environment.</param>
    /// <param name="work">The command.</param>
    /// <param name="ct">Cancels.</param>
    public static Task<int> UseAsync(IReadOnlyList<string> arguments, Func<KeyConsole, Task<int>> work, CancellationToken ct) => CommandDatabase.UseAsync(
        arguments,
        services => work(new KeyConsole(
            services.GetRequiredService<KeyStore>(), services.GetRequiredService<SourceStore>(), Console.Out, Console.Error)),
        Console.Error, ct);
}
