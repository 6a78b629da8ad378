using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Cli.Analysis;

/// <summary>How results are written for programs.</summary>
internal static class JsonOutput
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
    };

    /// <summary>One JSON document. JSON has no infinities: an end that the data do not limit is null.</summary>
    public static string Write<T>(T result) => JsonSerializer.Serialize(result, Options);

    /// <summary>The number, or null for an infinity.</summary>
    public static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
