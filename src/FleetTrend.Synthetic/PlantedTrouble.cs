namespace FleetTrend.Synthetic;

/// <summary>Something put into a synthetic fleet on purpose, and what should come of it.</summary>
/// <param name="Description">One sentence, for people.</param>
/// <param name="Answer">What should come of it.</param>
/// <param name="Registration">The aircraft; empty where it is a base.</param>
/// <param name="Base">The base.</param>
/// <param name="TypeGroup">The type group.</param>
/// <param name="PartKind">Kind of part; empty where it is none.</param>
/// <param name="SinceDate">The day on which it began; null where it was so from the start.</param>
public sealed record PlantedTrouble(
    string Description, PlantedAnswer Answer, string Registration, string Base, string TypeGroup, string PartKind, DateOnly? SinceDate);
