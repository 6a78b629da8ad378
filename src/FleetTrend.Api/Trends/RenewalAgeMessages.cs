using FleetTrend.Trends.RenewalAges;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Renewal ages and look intervals, as the contract writes them.</summary>
internal static class RenewalAgeMessages
{
    public static Wire.RenewalAge ToWire(this RenewalAge age)
    {
        var message = new Wire.RenewalAge
        {
            TypeGroup = age.TypeGroup,
            Kind = age.Kind,
            Title = age.Title,
            Base = age.Base ?? "",
            FailureCount = age.Failures,
            LifeCount = age.Lives,
            Finding = age.Finding.ToWire(),
            CostRatio = age.CostRatio,
            Shape = age.Shape?.ToWire(),
            CheapestAge = age.CheapestAge?.ToWire(),
            Saved = age.Saved?.ToWire(),
            AllowedChance = age.AllowedChance,
            LongestLook = age.LongestLook?.ToWire(),
            SetLookHours = age.SetLookHours,
            ChanceAtSet = age.ChanceAtSet?.ToWire(),
            BetterLaw = age.BetterLaw ?? "",
            Statement = RenewalAgeWords.Statement(age),
        };
        if (age.MakerRenewalHours is { } makerAge)
            message.MakerRenewalHours = makerAge;
        if (age.AgeHours is { } hours)
            message.AgeHours = hours;
        if (age.LookedAtUntilHours is { } until)
            message.LookedAtUntilHours = until;
        if (age.MakerLookHours is { } makerLook)
            message.MakerLookHours = makerLook;
        if (age.LookHours is { } look)
            message.LookHours = look;
        if (age.FailuresToTell is { } failures)
            message.FailuresToTell = failures;
        return message;
    }

    private static Wire.RenewalAge.Types.Finding ToWire(this RenewalFinding finding) => finding switch
    {
        RenewalFinding.NotShown => Wire.RenewalAge.Types.Finding.NotShown,
        RenewalFinding.DoesNotWearOut => Wire.RenewalAge.Types.Finding.DoesNotWearOut,
        RenewalFinding.Renew => Wire.RenewalAge.Types.Finding.Renew,
        _ => Wire.RenewalAge.Types.Finding.NotKnown,
    };
}
