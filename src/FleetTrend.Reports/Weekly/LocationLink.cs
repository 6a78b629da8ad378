using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;

namespace FleetTrend.Reports.Weekly;

/// <summary>A location as a link to its page.</summary>
public static class LocationLink
{
    /// <summary>On a page, in words.</summary>
    public static Line OnPage(string typeGroup, string location) =>
        Line.Join(new Run.Link(FirstLetter.Capital(LocationWords.Name(location)), Path(typeGroup, location)));

    /// <summary>The page.</summary>
    public static Uri Path(string typeGroup, string location)
    {
        ArgumentNullException.ThrowIfNull(location);
        return new($"/locations/{Uri.EscapeDataString(typeGroup)}/{string.Join('/', location.Split('/').Select(Uri.EscapeDataString))}", UriKind.Relative);
    }
}
