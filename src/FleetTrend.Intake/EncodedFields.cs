using System.Buffers.Binary;
using System.Text;
using Google.Type;

namespace FleetTrend.Intake;

/// <summary>Fields of a content as bytes, in the forms that <see cref="ContentHash"/> describes. Whoever adds them adds them by ascending
/// number.</summary>
internal sealed class EncodedFields
{
    private const uint Count = 0;
    private const uint EightBytes = 1;
    private const uint Bytes = 2;

    private readonly List<byte> bytes = [];

    /// <summary>All that was added.</summary>
    public byte[] ToArray() => [.. bytes];

    /// <summary>A text; nothing where it is empty.</summary>
    public EncodedFields Text(uint number, string value)
    {
        if (value.Length > 0)
            Add(number, Encoding.UTF8.GetBytes(value));
        return this;
    }

    /// <summary>A number; 0 is written like any other.</summary>
    public EncodedFields Number(uint number, double value)
    {
        AddHeader(number, EightBytes);
        Span<byte> eight = stackalloc byte[sizeof(double)];
        BinaryPrimitives.WriteDoubleLittleEndian(eight, value);
        bytes.AddRange(eight);
        return this;
    }

    /// <summary>A number; nothing where it is 0.</summary>
    public EncodedFields NumberUnlessZero(uint number, double value) => value == 0 ? this : Number(number, value);

    /// <summary>A word of the contract, by its number there; nothing where it is the first, which says that none is told.</summary>
    public EncodedFields Word<TWord>(uint number, TWord value)
        where TWord : struct, Enum => WholeUnlessZero(number, (ulong)Convert.ToInt64(value, null));

    /// <summary>Yes as 1; nothing for no.</summary>
    public EncodedFields Truth(uint number, bool value) => WholeUnlessZero(number, value ? 1u : 0u);

    /// <summary>Year, month and day; nothing where the day is absent.</summary>
    public EncodedFields Day(uint number, Date? value) => value is null
        ? this
        : Group(number, new EncodedFields().WholeUnlessZero(1, (ulong)value.Year).WholeUnlessZero(2, (ulong)value.Month).WholeUnlessZero(3, (ulong)value.Day));

    /// <summary>Fields that belong together.</summary>
    public EncodedFields Group(uint number, EncodedFields fields)
    {
        Add(number, fields.ToArray());
        return this;
    }

    /// <summary>A count; 0 is written like any other.</summary>
    public EncodedFields Whole(uint number, int value) => AddWhole(number, (ulong)value);

    private EncodedFields WholeUnlessZero(uint number, ulong value) => value == 0 ? this : AddWhole(number, value);

    private EncodedFields AddWhole(uint number, ulong value)
    {
        AddHeader(number, Count);
        AddCount(value);
        return this;
    }

    private void Add(uint number, byte[] value)
    {
        AddHeader(number, Bytes);
        AddCount((ulong)value.Length);
        bytes.AddRange(value);
    }

    private void AddHeader(uint number, uint form) => AddCount((8 * number) + form);

    /// <summary>Seven bits to a byte, the lowest first; the high bit of a byte says that another follows.</summary>
    private void AddCount(ulong value)
    {
        for (; value >= 0x80; value >>= 7)
            bytes.Add((byte)(value | 0x80));
        bytes.Add((byte)value);
    }
}
