using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Cli.Tests;

/// <summary>Every log message of the product, of all assemblies: the command line brings them all with it.</summary>
public sealed partial class LogMessageTests
{
    private const BindingFlags Everything =
        BindingFlags.DeclaredOnly | BindingFlags.Static | BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic;

    /// <summary>First digit of the numbers of an assembly, as DEVELOPERS.md has it.</summary>
    private static readonly Dictionary<string, int> Thousands = new(StringComparer.Ordinal)
    {
        ["FleetTrend.Hosting"] = 1,
        ["FleetTrend.Api"] = 3,
        ["FleetTrend.Worker"] = 4,
        ["FleetTrend.Results"] = 5,
    };

    private static readonly IReadOnlyList<(string Assembly, MethodInfo Method, LoggerMessageAttribute Message)> All = [..
        from file in Directory.EnumerateFiles(AppContext.BaseDirectory, "FleetTrend.*.dll").Append(typeof(FleetTrend.Cli.ExitCode).Assembly.Location)
        let assembly = Assembly.LoadFrom(file)
        from type in assembly.GetTypes()
        from method in type.GetMethods(Everything)
        let message = method.GetCustomAttribute<LoggerMessageAttribute>()
        where message is not null
        select (assembly.GetName().Name!, method, message)];

    [Fact]
    public void An_event_number_means_one_thing_in_all_processes_and_tells_whose_it_is()
    {
        Assert.Equal(Thousands.Keys.Order(StringComparer.Ordinal), All.Select(m => m.Assembly).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        Assert.All(All.GroupBy(m => m.Message.EventId), same => Assert.Single(same));
        Assert.All(All, m => Assert.Equal(Thousands[m.Assembly], m.Message.EventId / 1000));
    }

    [Fact] // The invariant culture, in which log messages are written, has dates such as 11/26/2026 and durations such as 00:00:00.8123.
    public void Dates_have_an_ISO_form_and_durations_are_numbers_with_a_unit()
    {
        Assert.All(All, m => Assert.All(m.Method.GetParameters(), parameter =>
        {
            Assert.NotEqual(typeof(TimeSpan), parameter.ParameterType);
            if (parameter.ParameterType == typeof(DateOnly))
                Assert.Matches($@"(?i)\{{{parameter.Name}:yyyy-MM-dd\}}", m.Message.Message);
            if (parameter.ParameterType == typeof(DateTimeOffset) || parameter.ParameterType == typeof(DateTime))
                Assert.Matches($@"(?i)\{{{parameter.Name}:O\}}", m.Message.Message);
        }));
    }

    [Fact]
    public void A_message_begins_with_what_happened_and_is_one_line() =>
        Assert.All(All, m => Assert.Matches(EventFirst(), m.Message.Message));

    // A past participle or present participle; or a state such as "Traffic is unencrypted".
    [GeneratedRegex(@"^([A-Z][a-z]+(ed|ing)|Joined|Left|Read|Lost|Sent|Set|Wrote|Gave up|Traffic is) [^\r\n]*[^\s.]\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex EventFirst();
}
