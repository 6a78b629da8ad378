using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends;

/// <summary>
/// A snapshot as JSON and back: names in camel case, enum values by name, instants in UTC, absent values left out. The same
/// snapshot gives the same bytes; a number that is not finite is refused, since it would say nothing.
/// </summary>
public static class TrendSnapshotJson
{
    /// <summary>The options, for callers that write to a stream.</summary>
    public static JsonSerializerOptions Options { get; } = MakeOptions();

    /// <summary>The snapshot as JSON.</summary>
    public static string Write(TrendSnapshot snapshot) => JsonSerializer.Serialize(snapshot, Options);

    /// <summary>The snapshot in that JSON.</summary>
    /// <exception cref="JsonException">It is no snapshot.</exception>
    public static TrendSnapshot Read(string json) =>
        JsonSerializer.Deserialize<TrendSnapshot>(json, Options) ?? throw new JsonException("The JSON holds no snapshot.");

    private static JsonSerializerOptions MakeOptions()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            NumberHandling = JsonNumberHandling.Strict,
        };
        options.Converters.Add(new JsonStringEnumConverter(namingPolicy: null, allowIntegerValues: false));
        options.Converters.Add(new UtcInstantConverter());
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}
