using System.Collections;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Messages of the contract with anything in their fields. One number gives one message, so a failure can be repeated.</summary>
internal sealed class HostileMessages(int seed)
{
    private static readonly string[] Texts =
    [
        "", " ", "ZZ-A01", "zz-a01", "shop-cards", "card 17", "exhaust/cyl-3/flange-weld", "exhaust/cyl-3/gasket", "trainer-four", "North", "\0", "\ud83d\udd27", "\u202e",
        "../../etc/passwd", "'; drop table records; --", "<script>", new string('x', 20_000), "exhaust/cyl-3/flange-weld\n", "\u0130", "Ǆ",
    ];

    private static readonly double[] Numbers =
    [
        0, -0.0, 0.1, 812.4, 812.45, -1, double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, double.Epsilon, 1e7, 200_000,
    ];

    private static readonly int[] Wholes = [0, 1, 2, 3, 12, 31, 2024, 2026, -1, 10_000, int.MinValue, int.MaxValue];

    private readonly Random random = new(seed);

    public T Make<T>()
        where T : IMessage, new()
    {
        var message = new T();
        Fill(message);
        return message;
    }

    public IMessage Make(MessageDescriptor type)
    {
        var message = (IMessage)Activator.CreateInstance(type.ClrType)!;
        Fill(message);
        return message;
    }

    /// <summary>Gives one field of a message another value, or several where it is a list.</summary>
    public void SpoilOneField(IMessage message)
    {
        var field = Pick([.. message.Descriptor.Fields.InDeclarationOrder()]);
        if (field.IsRepeated)
            ((IList)field.Accessor.GetValue(message)).Add(Value(field));
        else
            field.Accessor.SetValue(message, Value(field));
    }

    private void Fill(IMessage message)
    {
        foreach (var field in message.Descriptor.Fields.InDeclarationOrder())
        {
            if (field.IsRepeated)
            {
                var list = (IList)field.Accessor.GetValue(message);
                for (var i = random.Next(4); i > 0; i--)
                    list.Add(Value(field));
            }
            else if (random.Next(5) > 0)
            {
                field.Accessor.SetValue(message, Value(field));
            }
        }
    }

    private object Value(FieldDescriptor field)
    {
        switch (field.FieldType)
        {
            case FieldType.Message:
                var message = (IMessage)Activator.CreateInstance(field.MessageType.ClrType)!;
                Fill(message);
                return message;
            case FieldType.String:
                return Pick(Texts);
            case FieldType.Double:
                return Pick(Numbers);
            case FieldType.Enum:
                return Enum.ToObject(field.EnumType.ClrType, random.Next(-1, 13));
            case FieldType.Bool:
                return random.Next(2) == 0;
            case FieldType.Int64:
                return (long)Pick(Wholes);
            default:
                return Pick(Wholes);
        }
    }

    private T Pick<T>(T[] values) => values[random.Next(values.Length)];
}
