using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records;

namespace FleetTrend.Observations.Keeping;

/// <summary>Hours as whole tenths.</summary>
internal sealed class HoursConverter : JsonConverter<Hours>
{
    public override Hours Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Hours.FromTenths(reader.GetInt64());

    public override void Write(Utf8JsonWriter writer, Hours value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Tenths);
}
