using FleetTrend.Intake;

namespace FleetTrend.Api.Json;

/// <summary>Records of a batch whose JSON could not be read, by their place in it: each is refused by itself, and the others are pushed.
/// In the request stands their key alone, where that could be read.</summary>
/// <param name="ByPlace">What is wrong with each.</param>
internal sealed record UnreadRecords(IReadOnlyDictionary<int, IReadOnlyList<Refusal>> ByPlace);
