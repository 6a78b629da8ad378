using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Observations.Keeping;

/// <summary>A kind of location by its name.</summary>
internal sealed class LocationKindConverter(IReadOnlyDictionary<string, LocationKind> kinds) : JsonConverter<LocationKind>
{
    public override LocationKind Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        kinds.TryGetValue(reader.GetString()!, out var kind) ? kind : throw new JsonException($"No kind of location is named {reader.GetString()}.");

    public override void Write(Utf8JsonWriter writer, LocationKind value, JsonSerializerOptions options) => writer.WriteStringValue(value.Name);
}
