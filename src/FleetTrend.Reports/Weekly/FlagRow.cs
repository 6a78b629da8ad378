using FleetTrend.Trends.Flags;

namespace FleetTrend.Reports.Weekly;

/// <summary>A flag as a row of a table.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Flag">What it says.</param>
/// <param name="State">Its state, and who answered, in words.</param>
/// <param name="Page">Its page; may be relative.</param>
public sealed record FlagRow(long Number, ProposedFlag Flag, string State, Uri Page);
