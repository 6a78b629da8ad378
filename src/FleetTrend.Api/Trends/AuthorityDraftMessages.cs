using FleetTrend.Trends.AuthorityDrafts;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Drafts for an authority as the contract writes them.</summary>
internal static class AuthorityDraftMessages
{
    public static Wire.AuthorityDraft ToWire(this AuthorityDraft draft) => new()
    {
        Registration = draft.Registration,
        RecordKey = EvidenceMessages.ToWire(draft.Key),
        Location = draft.Location,
        Condition = (Wire.Condition)draft.Condition,
        FoundDate = draft.FoundDate.ToWire(),
        IsOpen = draft.IsOpen,
        Citations = { draft.Paragraphs.Select(p => p.Citation) },
        Text = draft.Text ?? "",
        WhyNot = draft.WhyNot ?? "",
    };
}
