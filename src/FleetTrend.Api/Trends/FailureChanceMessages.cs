using FleetTrend.Trends.FailureChances;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Chances before the next look as the contract writes them.</summary>
internal static class FailureChanceMessages
{
    public static Wire.FailureChance ToWire(this FailureChance chance) => new()
    {
        Registration = chance.Registration,
        Base = chance.Base,
        TypeGroup = chance.TypeGroup,
        ExpectedCount = chance.Expected,
        ExpectedLower = chance.Lower,
        ExpectedUpper = chance.Upper,
        AnyChance = chance.AnyChance,
        Confidence = chance.Confidence,
        Parts =
        {
            chance.Parts.Select(p => new Wire.PartChance
            {
                Location = p.Location,
                Kind = p.Kind,
                GoodHours = p.GoodHours,
                AgeHours = p.AgeHours,
                NextLookHours = p.NextLookHours,
                Chance = p.Chance,
                Lower = p.Lower,
                Upper = p.Upper,
            }),
        },
        AgeUnknownCount = chance.AgeUnknown,
        TooFewFailuresCount = chance.TooFewFailures,
        RecordKeys = { chance.Evidence.Select(EvidenceMessages.ToWire) },
    };

    public static Wire.ChanceCalibration ToWire(this ChanceCalibration calibration) => new()
    {
        TypeGroup = calibration.TypeGroup,
        FittedDate = calibration.FittedDate.ToWire(),
        LookCount = calibration.Looks,
        ExpectedCount = calibration.Expected,
        FoundCount = calibration.Found,
        Confidence = calibration.Confidence,
        Groups = { calibration.Groups.Select(ToWire) },
        Laws =
        {
            calibration.Laws.Select(l => new Wire.LifeLaw
            {
                Kind = l.Kind, Base = l.Base ?? "", Distribution = l.Distribution, FailureCount = l.Failures, LifeCount = l.Lives,
            }),
        },
    };

    public static Wire.ChanceGroup ToWire(ChanceGroup group) => new()
    {
        FromChance = group.From,
        ToChance = group.To,
        LookCount = group.Looks,
        ExpectedCount = group.Expected,
        FoundCount = group.Found,
        LowerCount = group.Lower,
        UpperCount = group.Upper,
    };
}
