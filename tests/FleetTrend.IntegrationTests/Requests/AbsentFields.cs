namespace FleetTrend.IntegrationTests.Requests;

/// <summary>What an absent field of a call that writes means, by full name without the package. A field that is not here is required.</summary>
internal static class AbsentFields
{
    /// <summary>The words of the contract that say what absent means, as they stand above the field.</summary>
    public static IReadOnlyDictionary<string, string> Meanings { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["RecordKey.revision"] = "0 is read as 1",
        ["Aircraft.meter_offset_hours"] = "which is also what absent means",
        ["Installation.part_hours"] = "Absent means unknown",
        ["Installation.serial_number"] = "where the part has one",
        ["Installation.part_number"] = "for people",
        ["Installation.location_code"] = "in place of location",
        ["Removal.examined_good"] = "Absent is false",
        ["Removal.serial_number"] = "where the part has one",
        ["Removal.location_code"] = "in place of location",
        ["LocationLook.method"] = "Absent is not told",
        ["LocationLook.location_code"] = "in place of location",
        ["Finding.grade"] = "Unspecified means defect",
        ["Finding.size_mm"] = "absent where it has none",
        ["Finding.trace_colour"] = "Absent is not told",
        ["Finding.method"] = "Absent is not told",
        ["Finding.same_event_as"] = "two events unless this says that they are one",
        ["Finding.note"] = "Free text for people",
        ["Finding.location_code"] = "in place of location",
        ["Finding.condition_code"] = "in place of condition",
        ["Action.part_hours"] = "absent means new",
        ["Action.note"] = "Free text for people",
        ["Action.location_code"] = "in place of location",
        ["Action.kind_code"] = "in place of kind",
        ["PracticeChange.base"] = "Absent means every base",
        ["PracticeChange.type_group"] = "Absent means every type group",
        ["PracticeChange.locations"] = "None means the whole aircraft",
        ["PracticeChange.part_number"] = "Absent means that the part stays the same",
        ["PracticeChange.why"] = "Absent means not told",
        ["StockCount.lead_time_days"] = "Absent means not told",
        ["Retraction.reason"] = "for people",
        ["LocationKind.look_for"] = "empty says to see the maker's instructions",
        ["LocationKind.jasc_code"] = "empty where there is none",
        ["LocationKind.has_life"] = "on the way in, leave it out",
        ["Layout.title"] = "For people",
        ["Location.look_for"] = "empty takes the kind's line",
        ["Location.jasc_code"] = "empty where there is none",
        ["TypeGroup.title"] = "For people",
        ["Source.title"] = "For people",
        ["CreateKeyRequest.source"] = "or empty",
        ["AcknowledgeFlagRequest.comment"] = "up to 2,000 characters",
        ["ActOnFlagRequest.time_in_service_hours"] = "Absent is not told",
        ["AssignFlagRequest.assignee"] = "empty for nobody",
        ["LookInterval.type_group"] = "empty for all of them",
        ["LookInterval.kind"] = "empty for all of them",
        ["MakerLimit.type_group"] = "empty for all of them",
        ["MakerLimit.kind"] = "empty for all of them",
        ["MakerLimit.renewal_hours"] = "absent where there is none",
        ["MakerLimit.look_hours"] = "absent where there is none",
        ["ReportSchedule.paused"] = "Absent is false",
        ["ReportSchedule.type_group"] = "empty where base is told",
        ["ReportSchedule.recipients"] = "Absent means nobody",
        ["StreamRecordsRequest.sequence"] = "Absent is 0",
    };

    /// <summary>The words of fields that many requests share.</summary>
    public static IReadOnlyDictionary<string, string> SharedMeanings { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["validate_only"] = "Check only",
        ["etag"] = "Absent answers the flag whatever came",
        ["hold_unregistered"] = "instead of refusing it",
    };
}
