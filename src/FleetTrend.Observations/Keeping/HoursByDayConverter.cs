using System.Text.Json;
using System.Text.Json.Serialization;
using FleetTrend.Records;

namespace FleetTrend.Observations.Keeping;

/// <summary>Hours by day as one list: day number and tenths in turn, each as the difference from the one before.</summary>
internal sealed class HoursByDayConverter : JsonConverter<HoursByDay>
{
    public override HoursByDay Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var days = new List<HoursOnDate>();
        var (day, tenths) = (0, 0L);
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            day += reader.GetInt32();
            reader.Read();
            tenths += reader.GetInt64();
            days.Add(new HoursOnDate(DateOnly.FromDayNumber(day), Hours.FromTenths(tenths)));
        }

        return new HoursByDay(days);
    }

    public override void Write(Utf8JsonWriter writer, HoursByDay value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        var (day, tenths) = (0, 0L);
        foreach (var known in value.Days)
        {
            writer.WriteNumberValue(known.Date.DayNumber - day);
            writer.WriteNumberValue(known.Hours.Tenths - tenths);
            (day, tenths) = (known.Date.DayNumber, known.Hours.Tenths);
        }

        writer.WriteEndArray();
    }
}
