using System.Net.Mail;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what is asked about reports.</summary>
public static class ReportRules
{
    private const int MaxAddresses = 50;
    private const int MaxAddressLength = 254;
    private const int MaxBaseLength = 60;
    private const int MaxRequestIdLength = 60;

    /// <summary>Every rule that a list of recipients breaks.</summary>
    public static IReadOnlyList<Refusal> Recipients(Wire.SetRecipientsRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("base", request.Base, 1, MaxBaseLength);
        Addresses(reader, "addresses", request.Addresses);
        return reader.Refusals;
    }

    /// <summary>Every rule that a list of mails breaks.</summary>
    public static IReadOnlyList<Refusal> Mails(Wire.ListMailsRequest request)
    {
        var reader = new FieldReader(default);
        reader.Filter("state", request.State);
        return reader.Refusals;
    }

    /// <summary>Every rule that a request for a report breaks.</summary>
    public static IReadOnlyList<Refusal> Request(Wire.RequestReportRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("request_id", request.RequestId, 1, MaxRequestIdLength);
        return reader.Refusals;
    }

    /// <summary>Mail addresses of people who get a report.</summary>
    internal static void Addresses(FieldReader reader, string list, IReadOnlyCollection<string> addresses)
    {
        if (addresses.Count > MaxAddresses)
        {
            reader.RefuseBare(list, $"{addresses.Count}", Reasons.TooManyItems, "must be a list of up to 50 mail addresses");
            return;
        }

        foreach (var (index, address) in addresses.Index())
        {
            var field = $"{list}[{index}]";
            var broken = reader.Refusals.Count;
            reader.Line(field, address, 1, MaxAddressLength);
            // Only a bare address: a name beside it would be a second place for the same person.
            if (reader.Refusals.Count == broken && !(MailAddress.TryCreate(address, out var parsed) && parsed.Address == address))
                reader.Refuse(field, address, Reasons.PatternMismatch, "must be a mail address such as shop@example.org");
        }
    }
}
