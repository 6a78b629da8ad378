using System.Collections;
using FleetTrend.IntegrationTests.Access;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Every text of every call that writes, found in the contract's own descriptors: what hides or turns text is refused by field.</summary>
[Collection(SharedPostgres.Name)]
public sealed class TextFieldTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly HashSet<string> MultiLine = new(StringComparer.Ordinal) { "note", "comment", "reason", "why" };

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    /// <summary>A control, a bidirectional override and isolate, a zero-width character, a line separator, a filler; a blank at either end.</summary>
    public static TheoryData<string> Hostile() =>
        ["a\u0007b", "a\u202eb", "a\u2066b", "a\u200bb", "a\u2028b", "a\u3164b", "a\u00adb", " ab", "ab\u00a0"];

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task Hidden_characters_and_blanks_at_the_ends_are_refused_in_every_text(string text)
    {
        var taken = new List<string>();
        var fields = Fields().ToList();
        Assert.True(fields.Count > 60, $"only {fields.Count} fields found");
        foreach (var (call, path) in fields)
        {
            var refused = await RefusedAsync(call, path, text);
            if (refused.Count == 0)
                taken.Add($"{Contract.NameOf(call)} {Name(path)}");
        }

        Assert.Empty(taken);
    }

    [Fact] // The notes of records and answers are of several lines by contract; nothing else is.
    public async Task A_line_break_is_taken_in_notes_alone()
    {
        foreach (var (call, path) in Fields())
        {
            var refused = await RefusedAsync(call, path, "a\nb");
            Assert.Equal(
                (Name(path), !MultiLine.Contains(path[^1].Name)),
                (Name(path), refused.Count > 0));
        }
    }

    [Fact] // So that a refusal above is of the characters and not of the field.
    public async Task The_same_texts_without_them_are_printable()
    {
        foreach (var (call, path) in Fields())
            Assert.DoesNotContain("TEXT_NOT_PRINTABLE", (await RefusedAsync(call, path, "ab")).Select(v => v.Reason));
    }

    private static IEnumerable<(MethodDescriptor Call, FieldDescriptor[] Path)> Fields() => Contract.Calls
        .Where(call => call.IsClientStreaming || Contract.HttpOf(call) is { Verb.Method: not "GET" })
        .Where(call => call.Name != "ReproduceReport")
        .SelectMany(call => Texts(call.InputType, []).Select(path => (call, path)));

    private static IEnumerable<FieldDescriptor[]> Texts(MessageDescriptor type, FieldDescriptor[] before)
    {
        foreach (var field in type.Fields.InDeclarationOrder())
        {
            if (field.FieldType == FieldType.String)
                yield return [.. before, field];
            if (field.FieldType == FieldType.Message && field.MessageType.File.Package == "fleettrend.v1")
            {
                foreach (var path in Texts(field.MessageType, [.. before, field]))
                    yield return path;
            }
        }
    }

    /// <summary>The refusals of a field in the answer to a request that has it and, so that identifiers are looked up, plain texts beside it.</summary>
    private async Task<List<BadRequest.Types.FieldViolation>> RefusedAsync(MethodDescriptor call, FieldDescriptor[] path, string text)
    {
        var request = call.InputType.Parser.ParseFrom(ByteString.Empty);
        foreach (var beside in call.InputType.Fields.InDeclarationOrder().Where(f => f is { FieldType: FieldType.String, IsRepeated: false }))
            beside.Accessor.SetValue(request, "ab");
        var message = request;
        foreach (var field in path[..^1])
            message = Inside(message, field);
        if (path[^1].IsRepeated)
            ((IList)path[^1].Accessor.GetValue(message)).Add(text);
        else
            path[^1].Accessor.SetValue(message, text);
        var status = await StatusAsync(call, request);
        var name = Name(path);
        return [.. (status?.GetDetail<BadRequest>()?.FieldViolations ?? [])
            .Where(v => v.Field.Length > 0 && (v.Field == name || name.EndsWith("." + v.Field, StringComparison.Ordinal)))];
    }

    private static IMessage Inside(IMessage message, FieldDescriptor field)
    {
        var inside = field.MessageType.Parser.ParseFrom(ByteString.Empty);
        if (field.IsRepeated)
            ((IList)field.Accessor.GetValue(message)).Add(inside);
        else
            field.Accessor.SetValue(message, inside);
        return inside;
    }

    private async Task<Google.Rpc.Status?> StatusAsync(MethodDescriptor call, IMessage request)
    {
        try
        {
            return await Contract.CallAsync(server.Channel, call, request) is { } answer ? Contract.StatusIn(answer) : null;
        }
        catch (RpcException refusal)
        {
            return refusal.GetRpcStatus();
        }
    }

    private static string Name(FieldDescriptor[] path) => string.Join('.', path.Select(f => f.IsRepeated ? f.Name + "[0]" : f.Name));
}
