using Domain = FleetTrend.Trends;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>A figure as the contract writes it.</summary>
internal static class FigureMessages
{
    public static Wire.Figure ToWire(this Domain.Figure figure)
    {
        var wire = new Wire.Figure
        {
            Confidence = figure.Confidence,
            Unit = figure.Unit,
            EventCount = figure.Events,
            Method = figure.Method,
            NotEnoughData = figure.NotEnoughData ?? "",
        };
        // An optional field of the contract is set or absent; it takes no null.
        if (figure.Value is { } value)
            wire.Value = value;
        if (figure.Lower is { } lower)
            wire.Lower = lower;
        if (figure.Upper is { } upper)
            wire.Upper = upper;
        if (figure.ExposureHours is { } hours)
            wire.ExposureHours = hours;
        if (figure.Lives is { } lives)
            wire.LifeCount = lives;
        if (figure.DataFrom is { } from)
            wire.DataFrom = from;
        if (figure.DataTo is { } to)
            wire.DataTo = to;
        if (figure.Dispersion is { } dispersion)
            wire.Dispersion = dispersion;
        return wire;
    }
}
