using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends;

/// <summary>Instants in UTC whatever their offset, so that equal instants give equal text.</summary>
internal sealed class UtcInstantConverter : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetDateTimeOffset().ToUniversalTime();

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.UtcDateTime.ToString("O", CultureInfo.InvariantCulture));
}
