using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends;

/// <summary>
/// How results are written as JSON: names in camel case, enum values by name, instants in UTC, absent values left out. The same
/// results give the same bytes; a number that is not finite is refused, since it would say nothing.
/// </summary>
public static class TrendJson
{
    /// <summary>The options.</summary>
    public static JsonSerializerOptions Options { get; } = MakeOptions();

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
