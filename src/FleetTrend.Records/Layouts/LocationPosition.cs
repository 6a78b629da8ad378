using System.Globalization;

namespace FleetTrend.Records.Layouts;

/// <summary>
/// At which cylinder and on which side a location is, by the parts of its path: <c>cyl-3</c> or <c>cylinder-3</c> names the cylinder, <c>left</c>
/// or <c>inlet-left</c> the side. On which side a cylinder is differs from engine to engine, so a cylinder tells no side.
/// </summary>
public static class LocationPosition
{
    private static readonly string[] Cylinders = ["cyl-", "cylinder-"];
    private static readonly string[] Sides = ["left", "right"];

    /// <summary>Number of the cylinder; null where the path names none.</summary>
    public static int? Cylinder(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        foreach (var part in path.Split('/'))
        {
            var name = Array.Find(Cylinders, c => part.StartsWith(c, StringComparison.Ordinal));
            if (name is not null && int.TryParse(part.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                return number;
        }

        return null;
    }

    /// <summary><c>left</c> or <c>right</c>; null where the path names neither.</summary>
    public static string? Side(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var words = path.Split('/', '-');
        return Array.Find(Sides, words.Contains);
    }
}
