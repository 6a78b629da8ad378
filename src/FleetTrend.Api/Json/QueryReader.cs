using FleetTrend.Intake;
using Google.Protobuf.Reflection;
using Microsoft.Extensions.Primitives;

namespace FleetTrend.Api.Json;

/// <summary>Holds the query of an address against the request of a call, and writes it in the one form that the transcoder reads.</summary>
internal static class QueryReader
{
    /// <summary>Reads a query.</summary>
    /// <param name="call">The call.</param>
    /// <param name="query">As it came.</param>
    /// <param name="read">Names as the transcoder knows them, with their values.</param>
    /// <returns>Broken rules.</returns>
    public static IReadOnlyList<Refusal> Read(JsonCall call, IQueryCollection query, out Dictionary<string, StringValues> read)
    {
        var refusals = new List<Refusal>();
        read = new Dictionary<string, StringValues>(StringComparer.Ordinal);
        foreach (var (name, values) in query)
        {
            if (Find(call, name) is not { } field)
                refusals.Add(Unknown(call, name));
            else if (Values(field, values, refusals) is { } good && !read.TryAdd(field.JsonName, good))
                refusals.Add(Twice(field, name));
        }

        return refusals;
    }

    /// <summary>A field that may stand in the query: of the request, single or a list of single values, neither in the path nor in the body.</summary>
    private static FieldDescriptor? Find(JsonCall call, string name) =>
        call.HasBody && call.BodyField is null ? null
        : JsonCall.Find(call.Input, name) is { } field && field != call.BodyField && !call.PathFields.Contains(field) && Scalar.Holds(field) ? field
        : null;

    private static StringValues? Values(FieldDescriptor field, StringValues values, List<Refusal> refusals)
    {
        if (values.Count > 1 && !field.IsRepeated)
        {
            refusals.Add(Twice(field, field.Name));
            return null;
        }

        var read = new List<string>(values.Count);
        foreach (var text in values.Select(value => value ?? ""))
        {
            if (Scalar.Read(field, text, ScalarForm.Address) is { } value)
                read.Add(value as string ?? text);
            else
                refusals.Add(new Refusal(field.Name, text, Scalar.ReasonOf(field), Scalar.RuleOf(field)) { Nearest = Scalar.Nearest(field, text) });
        }

        return read.Count == values.Count ? new StringValues([.. read]) : (StringValues?)null;
    }

    private static Refusal Twice(FieldDescriptor field, string name) =>
        new(field.Name, name, Reasons.FieldTwice, "must be given once, by one of its names");

    private static Refusal Unknown(JsonCall call, string name)
    {
        if (JsonCall.Find(call.Input, name) is { } field)
        {
            var rule = call.PathFields.Contains(field) ? "must stand in the path of this call, not in the query"
                : field == call.BodyField ? $"must be the body of this call, not stand in the query"
                : "must stand in the body of this call, not in the query";
            return new Refusal(field.Name, name, Reasons.FieldUnknown, rule);
        }

        if (call.BodyField is not null && JsonCall.Find(call.Body, name) is { } inBody)
            return new Refusal(call.BodyPath + inBody.Name, name, Reasons.FieldUnknown, "must stand in the body of this call, not in the query");
        var known = call.Input.Fields.InDeclarationOrder().Select(f => f.Name).Where(n => Find(call, n) is not null).ToList();
        var says = known.Count == 0 ? "must be absent: this call has no parameters" : $"must be one of the parameters {string.Join(", ", known)}";
        return new Refusal(name, name, Reasons.FieldUnknown, says) { Nearest = NearestName.Find(name, known) };
    }
}
