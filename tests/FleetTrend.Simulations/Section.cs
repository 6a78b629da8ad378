namespace FleetTrend.Simulations;

/// <summary>A part of the coverage page.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Write">Simulates and writes the text under the heading.</param>
internal sealed record Section(string Title, Action<TextWriter> Write);
