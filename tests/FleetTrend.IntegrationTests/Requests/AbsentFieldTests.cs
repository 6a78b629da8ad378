using FleetTrend.IntegrationTests.Access;
using Google.Protobuf.Reflection;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>Absent is not zero: every number, text, yes-or-no and choice that a caller can send either has presence, or the contract says
/// what its default means. The matrix leaves each of them out and looks what comes of it.</summary>
public sealed class AbsentFieldTests
{
    /// <summary>Numbers of a record that have no value to fall back on.</summary>
    private static readonly string[] RequiredNumbers =
    [
        "MeterReading.meter_hours", "MeterChange.old_meter_hours", "MeterChange.new_meter_hours", "Installation.time_in_service_hours",
        "Removal.time_in_service_hours", "Inspection.time_in_service_hours", "Finding.time_in_service_hours", "Action.time_in_service_hours",
    ];

    [Fact]
    public void A_number_without_a_documented_default_has_presence()
    {
        var numbers = Scalars().Where(f => f.FieldType is not (FieldType.String or FieldType.Bool or FieldType.Enum)).ToList();
        Assert.Superset(RequiredNumbers.ToHashSet(StringComparer.Ordinal), numbers.Where(f => f.HasPresence).Select(NameOf).ToHashSet(StringComparer.Ordinal));
        Assert.Empty(numbers.Where(f => !f.HasPresence && MeaningOf(f) is null).Select(NameOf));
    }

    [Fact] // A required choice has a first value that is refused, which its comment says; a required text is refused where it is empty.
    public void Every_choice_and_every_yes_or_no_says_what_its_default_means()
    {
        var silent = Scalars().Where(f => f.FieldType == FieldType.Bool && MeaningOf(f) is null)
            .Concat(Scalars().Where(f => f.FieldType == FieldType.Enum && !f.HasPresence && MeaningOf(f) is null
                && !SaysRefused(f.EnumType)))
            .Select(NameOf);
        Assert.Equal(["DeleteCodeRequest.kind"], silent); // CODE_KIND_UNSPECIFIED stands in answers too; the matrix sees it refused
    }

    [Fact]
    public void What_absent_means_stands_above_the_field()
    {
        var protos = Protos();
        foreach (var field in Fields())
        {
            if (MeaningOf(field) is { } meaning)
                Assert.Contains(meaning, CommentOf(protos, field));
        }
    }

    [Fact]
    public void No_row_of_the_table_is_about_a_field_that_is_not_there() =>
        Assert.Empty(AbsentFields.Meanings.Keys.Except(Fields().Select(NameOf), StringComparer.Ordinal));

    internal static string? MeaningOf(FieldDescriptor field) =>
        AbsentFields.Meanings.GetValueOrDefault(NameOf(field)) ?? AbsentFields.SharedMeanings.GetValueOrDefault(field.Name);

    internal static string NameOf(FieldDescriptor field) => $"{field.ContainingType.Name}.{field.Name}";

    /// <summary>Those of them that are single and hold no message.</summary>
    private static IEnumerable<FieldDescriptor> Scalars() => Fields().Where(field => field is { FieldType: not FieldType.Message, IsRepeated: false });

    /// <summary>Fields of all requests that write, at any depth.</summary>
    private static IEnumerable<FieldDescriptor> Fields()
    {
        var seen = new HashSet<MessageDescriptor>();
        var left = new Queue<MessageDescriptor>(Contract.Writes.Select(call => call.InputType));
        while (left.TryDequeue(out var message))
        {
            if (message.File.Package != "fleettrend.v1" || !seen.Add(message))
                continue;
            foreach (var field in message.Fields.InDeclarationOrder())
            {
                if (field.FieldType == FieldType.Message)
                    left.Enqueue(field.MessageType);
                yield return field;
            }
        }
    }

    private static bool SaysRefused(EnumDescriptor type) => Protos()[type.File.Name].Contains($"// Not told; refused.\n  {type.Values[0].Name} = 0;");

    private static string CommentOf(Dictionary<string, string> protos, FieldDescriptor field)
    {
        var text = protos[field.File.Name];
        var message = text.IndexOf($"message {field.ContainingType.Name} {{", StringComparison.Ordinal);
        var line = text.IndexOf($" {field.Name} = ", message, StringComparison.Ordinal);
        var before = text[message..line].Split('\n')[..^1].Reverse().TakeWhile(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal));
        return string.Join(' ', before.Reverse().Select(l => l.Trim().TrimStart('/').Trim()));
    }

    private static Dictionary<string, string> Protos() =>
        Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "guide", "protos"))
            .ToDictionary(file => $"fleettrend/v1/{Path.GetFileName(file)}", File.ReadAllText, StringComparer.Ordinal);
}
