namespace FleetTrend.Statistics.Norms;

/// <summary>A unit (aircraft) that has several alike positions (cylinders, sides): events and exposure of each.</summary>
/// <param name="Events">Events at each position, zero or more.</param>
/// <param name="Exposures">Exposure of each position, in the same order; zero where it was not watched.</param>
/// <param name="Times">How many units have just these.</param>
public sealed record PositionUnit(IReadOnlyList<int> Events, IReadOnlyList<double> Exposures, int Times = 1);
