using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Reports.Blocks;

/// <summary>A document as JSON and back, as it is stored: names in camel case, enum values by name, absent values left out.</summary>
public static class ReportDocumentJson
{
    private static readonly JsonSerializerOptions Options = BuildOptions();

    /// <summary>The document as JSON; the same document gives the same bytes.</summary>
    public static string Write(ReportDocument document) => JsonSerializer.Serialize(document, Options);

    /// <summary>The document in that JSON.</summary>
    /// <exception cref="JsonException">It is no document.</exception>
    public static ReportDocument Read(string json) =>
        JsonSerializer.Deserialize<ReportDocument>(json, Options) ?? throw new JsonException("The JSON holds no document.");

    private static JsonSerializerOptions BuildOptions()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            NumberHandling = JsonNumberHandling.Strict,
        };
        options.Converters.Add(new JsonStringEnumConverter(namingPolicy: null, allowIntegerValues: false));
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}
