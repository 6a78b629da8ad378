using System.Text.Json;
using FleetTrend.Records.Sources;

namespace FleetTrend.Store.DataProblems;

/// <summary>Record keys in the column that holds them.</summary>
internal static class EvidenceJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static string Write(IReadOnlyList<RecordKey> keys) => JsonSerializer.Serialize(keys, Options);

    public static IReadOnlyList<RecordKey> Read(string json) => JsonSerializer.Deserialize<List<RecordKey>>(json, Options) ?? [];
}
