using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Observations.Keeping;

/// <summary>
/// Observations of an aircraft as bytes and back, so that they need not be made again while nothing about the aircraft has changed.
/// Kinds of locations stand by name; the bytes serve only the code that wrote them.
/// </summary>
public sealed class KeptObservations
{
    private readonly JsonSerializerOptions options;

    /// <summary>Makes it.</summary>
    /// <param name="kinds">Every kind of location, by name.</param>
    public KeptObservations(IReadOnlyDictionary<string, LocationKind> kinds)
    {
        options = new JsonSerializerOptions { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };
        options.Converters.Add(new HoursConverter());
        options.Converters.Add(new HoursByDayConverter());
        options.Converters.Add(new RecordKeyConverter());
        options.Converters.Add(new LocationKindConverter(kinds));
    }

    /// <summary>The observations as bytes.</summary>
    public byte[] Write(AircraftObservations observations)
    {
        using var bytes = new MemoryStream();
        using (var packed = new BrotliStream(bytes, CompressionLevel.Fastest))
            JsonSerializer.Serialize(packed, observations, options);
        return bytes.ToArray();
    }

    /// <summary>The observations in bytes that <see cref="Write"/> made.</summary>
    /// <exception cref="JsonException">They hold none.</exception>
    public AircraftObservations Read(byte[] bytes)
    {
        using var packed = new BrotliStream(new MemoryStream(bytes), CompressionMode.Decompress);
        return JsonSerializer.Deserialize<AircraftObservations>(packed, options) ?? throw new JsonException("The bytes hold no observations.");
    }
}
