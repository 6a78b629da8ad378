using System.Globalization;
using FleetTrend.Api.Trends;
using FleetTrend.Intake;
using FleetTrend.Results;
using FleetTrend.Store.Flags;
using FleetTrend.Trends.Changes;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Flags;

/// <summary>A flag as the contract writes it.</summary>
internal static class FlagMessages
{
    /// <summary>What tells one version of a flag from the next.</summary>
    public static string EtagOf(StoredFlag flag) => flag.Version.ToString(CultureInfo.InvariantCulture);

    /// <summary>Where a flag stands, as the contract writes it.</summary>
    public static string StateOf(StoredFlag flag) => ContractWords.Write((Wire.FlagState)flag.State);

    public static Wire.FlagStep ToWire(this StoredStep step)
    {
        var wire = new Wire.FlagStep
        {
            State = (Wire.FlagState)step.State,
            StepTime = step.StepTime.ToWire(),
            By = step.By ?? "",
            Comment = step.Note,
            ActionDate = step.ActionDate.ToWire(),
            Assignee = step.Assignee ?? "",
        };
        if (step.ActionTimeInService is { } hours)
            wire.TimeInServiceHours = hours.Value;
        return wire;
    }

    public static Wire.Flag ToWire(this StoredFlag stored)
    {
        var said = stored.Said();
        var wire = new Wire.Flag
        {
            FlagId = stored.FlagId.ToString(CultureInfo.InvariantCulture),
            Kind = (Wire.FlagKind)said.Kind,
            State = (Wire.FlagState)stored.State,
            Registration = said.Registration ?? "",
            Base = said.Base,
            TypeGroup = said.TypeGroup,
            Condition = said.Condition is { } condition ? (Wire.Condition)condition : Wire.Condition.Unspecified,
            PartKind = said.PartKind ?? "",
            Locations = { said.Locations },
            Ratio = said.Ratio.ToWire(),
            ObservedCount = said.Observed,
            SinceDate = said.SinceDate.ToWire(),
            Statement = said.Statement,
            WhatToCheck = { said.WhatToCheck },
            RaiseTime = stored.RaiseTime.ToWire(),
            LastSeenTime = stored.LastSeenTime.ToWire(),
            AcknowledgedBy = stored.AnsweredBy ?? "",
            Acknowledgement = stored.Answer ?? "",
            Expected = said.Expectation?.ToWire(),
            TestMethod = said.Test ?? "",
            TestFamily = said.Family ?? "",
            CountedAfterDate = said.CountedAfterDate.ToWire(),
            Etag = EtagOf(stored),
            Assignee = stored.Assignee ?? "",
            ActionDate = stored.ActionDate.ToWire(),
            Tier = (Wire.FlagTier)stored.Proposal.Tier,
            Change = said.Change is { } change ? ToWire(change) : null,
        };
        if (said.Expected is { } expected)
            wire.ExpectedCount = expected;
        if (said.PValue is { } pValue)
        {
            wire.PValue = pValue.Value;
            wire.PValueLaw = (Wire.PValueLaw)pValue.Law;
        }
        if (said.QValue is { } qValue)
            wire.QValue = qValue;
        return wire;
    }

    private static Wire.FlagChange ToWire(Change change) => new()
    {
        SinceEarliestDate = change.SinceEarliestDate.ToWire(),
        SinceLatestDate = change.SinceLatestDate.ToWire(),
        Part = change.Part,
        PartShare = change.PartShare,
        FoundBeforeCount = change.FoundBefore,
        ExpectedBeforeCount = change.ExpectedBefore,
        LogScore = change.LogScore,
        FalseCallsPer50AircraftYears = change.FalseCallsPer50AircraftYears ?? 0,
        AircraftYearsPerFalseCall = change.AircraftYearsPerFalseCall,
        AircraftYearsCapped = change.IsAircraftYearsCapped,
        Dispersion = change.Dispersion,
        Variation = change.Variation,
        OthersCount = change.OthersCount,
    };
}
