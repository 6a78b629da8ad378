using System.Globalization;
using Microsoft.Extensions.Configuration;

namespace FleetTrend.Hosting.Configuration;

/// <summary>Reads settings one by one and keeps the errors, so that a person mends them all at once.</summary>
internal sealed class SettingReader(IConfiguration configuration)
{
    private const string Hidden = "(hidden)";
    private readonly List<SettingError> errors = [];

    public delegate bool Parser<T>(string text, out T value);

    public IReadOnlyList<SettingError> Errors => errors;

    /// <summary>The trimmed text of a setting; null when absent or empty.</summary>
    public string? Text(string name)
    {
        var text = configuration[name]?.Trim();
        return string.IsNullOrEmpty(text) ? null : text;
    }

    public T Value<T>(string name, T fallback, string rule, Parser<T> parse)
    {
        if (Text(name) is not { } text)
            return fallback;
        if (parse(text, out var value))
            return value;
        Refuse(name, text, rule);
        return fallback;
    }

    /// <summary>Texts with commas between them; none when absent.</summary>
    public IReadOnlyList<T> List<T>(string name, string rule, Parser<T> parse) => Value<IReadOnlyList<T>>(
        name, [], rule, (string text, out IReadOnlyList<T> values) =>
        {
            var read = new List<T>();
            values = read;
            foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            {
                if (!parse(part, out var value))
                    return false;
                read.Add(value);
            }

            return read.Count > 0;
        });

    public int Whole(string name, int fallback, int lowest, int highest) =>
        Value(name, fallback, $"must be a whole number from {lowest} to {highest}", (string text, out int value) =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value)
            && value >= lowest && value <= highest);

    public void Refuse(string name, string value, string rule) => errors.Add(new SettingError(name, value, rule));

    public void RefuseSecret(string name, string rule) => Refuse(name, Hidden, rule);
}
