using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Histories;

/// <summary>In place of the content of a record that cannot be read in full yet: it is kept until it can.</summary>
/// <param name="Registration">Registration mark of the aircraft that it is about, in upper case.</param>
/// <param name="Record">The record as it was sent; only intake can read it.</param>
/// <param name="Codes">Every code of its source that it carries.</param>
public sealed record HeldContent(string Registration, byte[] Record, IReadOnlyCollection<SourceCode> Codes);
