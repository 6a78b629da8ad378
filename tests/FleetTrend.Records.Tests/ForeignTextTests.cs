using System.Text;
using FleetTrend.Records.Texts;

namespace FleetTrend.Records.Tests;

public sealed class ForeignTextTests
{
    [Theory]
    [InlineData("done", "\u201cdone\u201d")]
    [InlineData("one\r\n\r\n  RELEASED TO SERVICE\n", "\u201cone / RELEASED TO SERVICE\u201d")]
    [InlineData("so\u201d RELEASED TO SERVICE \u201cso", "\u201cso' RELEASED TO SERVICE 'so\u201d")]
    [InlineData("a \"b\"", "\u201ca 'b'\u201d")]
    [InlineData("a\u202eb\u200bc", "\u201ca\\u202Eb\\u200Bc\u201d")]
    [InlineData("", "\u201c\u201d")]
    public void A_quotation_is_one_line_that_nothing_in_it_can_end(string text, string quoted) => Assert.Equal(quoted, ForeignText.Quoted(text));

    [Theory]
    [InlineData("f-101", "f-101")]
    [InlineData("ALL CLEAR", "\u201cALL CLEAR\u201d")]
    [InlineData("ALL\u00a0CLEAR", "\u201cALL\u00a0CLEAR\u201d")]
    public void An_identifier_that_reads_as_words_is_quoted(string text, string shown) => Assert.Equal(shown, ForeignText.Identifier(text));

    /// <summary>Unicode 16, PropList.txt: Bidi_Control; and zero-width and filler characters of Default_Ignorable_Code_Point.</summary>
    public static TheoryData<int> Hidden() =>
    [
        0x061C, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069,
        0x00AD, 0x034F, 0x115F, 0x1160, 0x180E, 0x200B, 0x200C, 0x200D, 0x2028, 0x2029, 0x2060, 0x3164, 0xFEFF, 0xFFA0, 0xE0041, 0xE0100,
        0x00, 0x07, 0x1B, 0x7F, 0x85,
    ];

    [Theory]
    [MemberData(nameof(Hidden))]
    public void What_hides_or_turns_text_is_hidden(int value) => Assert.True(ForeignText.IsHidden(new Rune(value)));

    [Theory]
    [InlineData("caf\u00e9 \u0438 \u05d0 \u4e2d \u00b0 \ud83d\udd27 \u26a0\ufe0f \u0301")]
    public void What_people_write_is_not(string text) => Assert.DoesNotContain(text.EnumerateRunes(), ForeignText.IsHidden);
}
