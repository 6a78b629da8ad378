using System.Collections.Concurrent;
using FleetTrend.Contracts.V1;
using Google.Protobuf.Reflection;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;

namespace FleetTrend.Api.Json;

/// <summary>Where the fields of a call's request stand in HTTP, by its google.api.http annotation.</summary>
internal sealed class JsonCall
{
    private static readonly ConcurrentDictionary<MessageDescriptor, Dictionary<string, FieldDescriptor>> Names = [];

    public JsonCall(GrpcJsonTranscodingMetadata transcoding)
    {
        Method = transcoding.MethodDescriptor;
        var rule = transcoding.HttpRule;
        HasBody = rule.Body.Length > 0;
        BodyField = rule.Body is "" or "*" ? null : Input.FindFieldByName(rule.Body);
        var path = rule.Get.Length > 0 ? rule.Get : rule.Post.Length > 0 ? rule.Post : rule.Put.Length > 0 ? rule.Put
            : rule.Delete.Length > 0 ? rule.Delete : rule.Patch;
        PathFields = path.Split('{').Skip(1).Select(part => Input.FindFieldByName(part.Split('}', '=')[0])).ToHashSet();
    }

    /// <summary>The call.</summary>
    public MethodDescriptor Method { get; }

    /// <summary>Its request.</summary>
    public MessageDescriptor Input => Method.InputType;

    /// <summary>Whether it has a body.</summary>
    public bool HasBody { get; }

    /// <summary>The field that is the body; null where there is no body, or where it is the request without the fields of the path.</summary>
    public FieldDescriptor? BodyField { get; }

    /// <summary>Fields that stand in the path.</summary>
    public IReadOnlySet<FieldDescriptor> PathFields { get; }

    /// <summary>What the body is.</summary>
    public MessageDescriptor Body => BodyField?.MessageType ?? Input;

    /// <summary>Path of the body within the request, as refusals write it: those of a record begin at the record.</summary>
    public string BodyPath => BodyField is null || BodyField.MessageType == Record.Descriptor ? "" : BodyField.Name + ".";

    /// <summary>A field by one of its two names, <c>found_date</c> or <c>foundDate</c>; null where there is none.</summary>
    public static FieldDescriptor? Find(MessageDescriptor message, string name) =>
        Names.GetOrAdd(message, NamesOf).GetValueOrDefault(name);

    private static Dictionary<string, FieldDescriptor> NamesOf(MessageDescriptor message)
    {
        var names = message.Fields.InDeclarationOrder().ToDictionary(f => f.JsonName, StringComparer.Ordinal);
        foreach (var field in message.Fields.InDeclarationOrder())
            names.TryAdd(field.Name, field);
        return names;
    }
}
