using System.Reflection;
using FleetTrend.Contracts.V1;
using Google.Api;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>Every call of the contract, from its own descriptors.</summary>
internal static class Contract
{
    public static IReadOnlyList<MethodDescriptor> Calls { get; } =
    [
        .. typeof(IntakeService).Assembly.GetTypes()
            .Select(type => type.GetProperty("Descriptor", BindingFlags.Public | BindingFlags.Static))
            .Where(property => property?.PropertyType == typeof(ServiceDescriptor))
            .SelectMany(property => ((ServiceDescriptor)property!.GetValue(null)!).Methods)
            .OrderBy(method => method.FullName, StringComparer.Ordinal),
    ];

    /// <summary>Calls that write: GetX and ListX read, and ReproduceReport computes.</summary>
    public static IEnumerable<MethodDescriptor> Writes => Calls.Where(call =>
        !call.Name.StartsWith("Get", StringComparison.Ordinal) && !call.Name.StartsWith("List", StringComparison.Ordinal)
        && call.Name != "ReproduceReport");

    /// <summary>As the tests write a call: <c>IntakeService/PushRecord</c>.</summary>
    public static string NameOf(MethodDescriptor call) => $"{call.Service.Name}/{call.Name}";

    /// <summary>The call as HTTP, from its annotation; null where it has none.</summary>
    public static (HttpMethod Verb, string Path, string? Body)? HttpOf(MethodDescriptor call)
    {
        if (RuleOf(call) is not { } rule)
            return null;
        var (verb, path) = PatternOf(rule);
        return (verb, string.Concat(path.Split('{', '}').Select((part, i) => i % 2 == 0 ? part : "1")), rule.Body.Length == 0 ? null : rule.Body);
    }

    /// <summary>The path of a call with the fields that stand in it, as in <c>/v1/flags/{flag_id}:close</c>.</summary>
    public static string TemplateOf(MethodDescriptor call) => PatternOf(RuleOf(call)!).Path;

    /// <summary>An empty request, or one whose first field called "source" names a source; null where it has no such field.</summary>
    public static IMessage? RequestAbout(MethodDescriptor call, string source)
    {
        var request = call.InputType.Parser.ParseFrom(ByteString.Empty);
        return SetSource(request, source, depth: 4) ? request : null;
    }

    /// <summary>Calls with bytes, so that one way serves every call.</summary>
    public static async Task<IMessage?> CallAsync(ChannelBase channel, MethodDescriptor call, IMessage request)
    {
        var bytes = Marshallers.Create<byte[]>(b => b, b => b);
        var invoker = channel.CreateCallInvoker();
        if (call.IsClientStreaming)
        {
            using var stream = invoker.AsyncDuplexStreamingCall(
                new Method<byte[], byte[]>(MethodType.DuplexStreaming, call.Service.FullName, call.Name, bytes, bytes), null, default);
            var writing = WriteAsync(stream.RequestStream, request);
            var answered = await stream.ResponseStream.MoveNext(CancellationToken.None);
            await writing;
            return answered ? call.OutputType.Parser.ParseFrom(stream.ResponseStream.Current) : null;
        }

        var answer = await invoker.AsyncUnaryCall(
            new Method<byte[], byte[]>(MethodType.Unary, call.Service.FullName, call.Name, bytes, bytes), null, default, request.ToByteArray());
        return call.OutputType.Parser.ParseFrom(answer);
    }

    /// <summary>The first google.rpc.Status within a message; null where there is none.</summary>
    public static Google.Rpc.Status? StatusIn(IMessage message)
    {
        if (message is Google.Rpc.Status status)
            return status;
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder().Where(f => f.FieldType == FieldType.Message && !f.IsMap))
        {
            var value = field.Accessor.GetValue(message);
            var items = field.IsRepeated ? ((System.Collections.IEnumerable)value).Cast<IMessage>() : value is IMessage one ? [one] : [];
            if (items.Select(StatusIn).FirstOrDefault(s => s is not null) is { } found)
                return found;
        }

        return null;
    }

    private static HttpRule? RuleOf(MethodDescriptor call) => call.GetOptions()?.GetExtension(AnnotationsExtensions.Http);

    private static (HttpMethod Verb, string Path) PatternOf(HttpRule rule) => rule.PatternCase switch
    {
        HttpRule.PatternOneofCase.Get => (HttpMethod.Get, rule.Get),
        HttpRule.PatternOneofCase.Post => (HttpMethod.Post, rule.Post),
        HttpRule.PatternOneofCase.Put => (HttpMethod.Put, rule.Put),
        HttpRule.PatternOneofCase.Delete => (HttpMethod.Delete, rule.Delete),
        HttpRule.PatternOneofCase.Patch => (HttpMethod.Patch, rule.Patch),
        _ => throw new InvalidOperationException($"{rule}"),
    };

    private static async Task WriteAsync(IClientStreamWriter<byte[]> requests, IMessage request)
    {
        try
        {
            await requests.WriteAsync(request.ToByteArray());
            await requests.CompleteAsync();
        }
        catch (Exception refused) when (refused is RpcException or InvalidOperationException)
        {
            // The call was refused before the request was read; reading the answer says why.
        }
    }

    private static bool SetSource(IMessage message, string source, int depth)
    {
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder())
        {
            if (field is { Name: "source", FieldType: FieldType.String })
            {
                field.Accessor.SetValue(message, source);
                return true;
            }

            if (field.FieldType != FieldType.Message || field.IsMap || depth == 0)
                continue;
            var inner = field.MessageType.Parser.ParseFrom(ByteString.Empty);
            if (!SetSource(inner, source, depth - 1))
                continue;
            if (field.IsRepeated)
                ((System.Collections.IList)field.Accessor.GetValue(message)).Add(inner);
            else
                field.Accessor.SetValue(message, inner);
            return true;
        }

        return false;
    }
}
