using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Keeping;

/// <summary>A record key as a list of its three parts.</summary>
internal sealed class RecordKeyConverter : JsonConverter<RecordKey>
{
    public override RecordKey Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        reader.Read();
        var source = reader.GetString()!;
        reader.Read();
        var id = reader.GetString()!;
        reader.Read();
        var revision = reader.GetInt32();
        reader.Read();
        return new RecordKey(source, id, revision);
    }

    public override void Write(Utf8JsonWriter writer, RecordKey value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteStringValue(value.Source);
        writer.WriteStringValue(value.SourceRecordId);
        writer.WriteNumberValue(value.Revision);
        writer.WriteEndArray();
    }
}
