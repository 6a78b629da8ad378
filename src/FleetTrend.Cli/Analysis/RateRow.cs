namespace FleetTrend.Cli.Analysis;

/// <summary>One unit; null where a number does not exist.</summary>
internal sealed record RateRow(
    string Unit, int Events, double Exposure, double? Rate, double? Lower, double? Upper, double? ShrunkRate, double? ShrunkLower,
    double? ShrunkUpper, double? PValue, double? QValue);
