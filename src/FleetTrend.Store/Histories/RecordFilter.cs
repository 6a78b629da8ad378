using FleetTrend.Records;

namespace FleetTrend.Store.Histories;

/// <summary>Which records are asked for; null means any.</summary>
/// <param name="Registration">Registration mark in upper case.</param>
/// <param name="Source">Name of a source.</param>
/// <param name="Kind">A kind of record.</param>
public sealed record RecordFilter(string? Registration, string? Source, RecordKind? Kind);
