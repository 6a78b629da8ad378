using FleetTrend.Store.Parameters;
using FleetTrend.Trends;
using Google.Protobuf;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Parameters;

/// <summary>Parameters as the contract writes them. The contract and the trends name each of them alike, so that a new one needs no line here.</summary>
internal static class ParameterMessages
{
    // The number of the change stands beside the parameters, not among them.
    private static readonly JsonParser Reader = new(JsonParser.Settings.Default.WithIgnoreUnknownFields(true));

    /// <summary>
    /// The parameters of a change as the trends take them; look intervals and makers' limits in one order, so that the same ones give the same
    /// text.
    /// </summary>
    public static TrendParameters ToTrends(this Wire.Parameters parameters)
    {
        var sorted = parameters.Clone();
        sorted.LookIntervals.Clear();
        sorted.LookIntervals.AddRange(parameters.LookIntervals
            .OrderBy(i => i.TypeGroup, StringComparer.Ordinal).ThenBy(i => i.Kind, StringComparer.Ordinal));
        sorted.MakerLimits.Clear();
        sorted.MakerLimits.AddRange(parameters.MakerLimits
            .OrderBy(l => l.TypeGroup, StringComparer.Ordinal).ThenBy(l => l.Kind, StringComparer.Ordinal));
        return TrendParameters.Read(JsonFormatter.Default.Format(sorted), revision: 0);
    }

    public static Wire.Parameters ToWire(this TrendParameters parameters) => Reader.Parse<Wire.Parameters>(parameters.ToJson());

    public static Wire.ParameterRevision ToWire(this ParameterRevision revision) => new()
    {
        Revision = revision.Revision,
        Parameters = TrendParameters.Read(revision.ValuesJson, revision.Revision).ToWire(),
        ChangeTime = revision.ChangeTime?.ToWire(),
        ChangedBy = revision.ChangedBy,
        Note = revision.Note,
    };
}
