using System.Reflection;
using Google.Protobuf.Reflection;

namespace FleetTrend.Intake;

/// <summary>Values of enums as the contract writes them: <c>CONDITION_LEAK_TRACE</c>.</summary>
public static class ContractWords
{
    /// <summary>Every value of a generated enum but the first, which says that none is told.</summary>
    public static IReadOnlyList<string> All<TWire>()
        where TWire : struct, Enum => [.. Words<TWire>.ByValue.Where(pair => !pair.Key.Equals(default(TWire))).Select(pair => pair.Value)];

    /// <summary>One value; its number where the contract has no such value.</summary>
    public static string Write<TWire>(TWire value)
        where TWire : struct, Enum => Words<TWire>.ByValue.GetValueOrDefault(value, value.ToString());

    /// <summary>The value of that word; null where there is none, or where it is the first, which says that none is told.</summary>
    public static TWire? Find<TWire>(string word)
        where TWire : struct, Enum =>
        Words<TWire>.ByValue.Where(pair => pair.Value == word && !pair.Key.Equals(default(TWire))).Select(pair => (TWire?)pair.Key).FirstOrDefault();

    private static class Words<TWire>
        where TWire : struct, Enum
    {
        public static readonly Dictionary<TWire, string> ByValue = Enum.GetValues<TWire>().ToDictionary(
            value => value, value => typeof(TWire).GetField(value.ToString())!.GetCustomAttribute<OriginalNameAttribute>()!.Name);
    }
}
