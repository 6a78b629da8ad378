using System.Text.Json;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Chances;

/// <summary>A p-value as an object of value and law. A bare number, as earlier versions stored it, tells no law: it counts as approximate.</summary>
internal sealed class PValueConverter : JsonConverter<PValue>
{
    public override PValue Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number)
            return PValue.Approximate(reader.GetDouble());
        var stored = JsonSerializer.Deserialize<Stored>(ref reader, options) ?? throw new JsonException("A p-value is missing.");
        return stored.Law == PValueLaw.Exact ? PValue.Exact(stored.Value) : PValue.Approximate(stored.Value);
    }

    public override void Write(Utf8JsonWriter writer, PValue value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new Stored(value.Value, value.Law), options);

    private sealed record Stored(double Value, PValueLaw Law);
}
