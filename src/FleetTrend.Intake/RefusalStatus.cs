using Google.Protobuf.WellKnownTypes;
using Google.Rpc;

namespace FleetTrend.Intake;

/// <summary>Broken rules in the form that a caller gets: google.rpc.Status with ErrorInfo and BadRequest.</summary>
public static class RefusalStatus
{
    /// <summary>Most rules that BadRequest lists: the answer of a unary call travels in headers, and clients take few kilobytes there.</summary>
    public const int MostListed = 20;

    /// <summary>One status for all broken rules of one thing. The first decides code and reason; BadRequest lists them, up to
    /// <see cref="MostListed"/>.</summary>
    /// <param name="refusals">At least one.</param>
    public static Status Build(IReadOnlyList<Refusal> refusals)
    {
        ArgumentOutOfRangeException.ThrowIfZero(refusals.Count, nameof(refusals));
        var first = refusals[0];
        var badRequest = new BadRequest();
        foreach (var refusal in refusals.Take(MostListed))
        {
            badRequest.FieldViolations.Add(new BadRequest.Types.FieldViolation
            {
                Field = refusal.Field,
                Description = refusal.Words,
                Reason = refusal.Reason.Name,
            });
        }

        return new Status
        {
            Code = (int)first.Reason.Code,
            Message = (first.Field.Length == 0 ? "" : $"{first.Field}: ") + first.Words + (refusals.Count == 1 ? ""
                : $" ({refusals.Count} rules broken; field_violations lists {(refusals.Count > MostListed ? $"the first {MostListed}" : "them")})"),
            Details = { Any.Pack(Info(first)), Any.Pack(badRequest) },
        };
    }

    /// <summary>One status for one broken rule.</summary>
    public static Status Build(Refusal refusal) => Build([refusal]);

    private static ErrorInfo Info(Refusal refusal)
    {
        var info = new ErrorInfo
        {
            Reason = refusal.Reason.Name,
            Domain = Reasons.Domain,
            Metadata = { ["field"] = refusal.Field, ["value"] = refusal.Value, ["rule"] = refusal.Rule },
        };
        if (refusal.Nearest is { } nearest)
            info.Metadata["nearest"] = nearest;
        return info;
    }
}
