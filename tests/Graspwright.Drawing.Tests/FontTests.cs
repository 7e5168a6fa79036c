using System.Text;
using CsCheck;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Drawing.Tests;

public sealed class FontTests
{
    // Read from the same files with the independent library fontTools 4.38: units, capital height, and widths of some letters.
    [Theory]
    [InlineData(false, 'H', 2084)]
    [InlineData(false, '1', 1308)]
    [InlineData(true, 'W', 2917)]
    public void Sizes_are_those_of_the_file(bool strong, char letter, int advance)
    {
        TrueTypeFont font = ShippedFont.Of(strong);
        Assert.Equal(2816, font.UnitsPerEm);
        Assert.Equal(2048, font.CapitalHeight);
        Assert.Equal(advance, font.Advance(font.Glyph(new Rune(letter))));
        Assert.Equal(10.0 * advance / 2048, font.WidthMm(letter.ToString(), 10), 1e-12);
    }

    [Fact]
    public void The_font_has_what_workshop_pages_need()
    {
        const string needed = "αβγδεζηθικλμνξοπρστυφχψωΔΘΛΞΠΣΦΨΩµ·°≤≥≈≠→←↑↓×÷−±²³½¼¾√∑∂∫∞…–—‘’“”éäöüßñçøåłœŠžЖ′″";
        Assert.Empty(needed.EnumerateRunes().Where(r => !ShippedFont.Regular.Has(r) || !ShippedFont.Bold.Has(r)).Select(r => r.ToString()));
        Assert.False(ShippedFont.Regular.Has(new Rune('漁')));
    }

    [Fact]
    public void The_licence_of_the_font_comes_with_the_program()
    {
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", ShippedFont.Licence, StringComparison.Ordinal);
        Assert.Contains("The Inter Project Authors", ShippedFont.Licence, StringComparison.Ordinal);
    }

    [Fact]
    public void Wrapped_lines_fit_and_lose_no_letter() =>
        Gen.Select(Gen.String[Gen.Char["abc ÄW.i\n"], 0, 80], Gen.Double[3, 60]).Sample((text, width) =>
        {
            IReadOnlyList<string> lines = ShippedFont.Wrap(text, width, 2.3);
            return lines.All(l => l.EnumerateRunes().Count() <= 1 || ShippedFont.WidthMm(l, 2.3) <= width + 1e-9)
                && Bare(string.Concat(lines)) == Bare(text);
        });

    private static string Bare(string text) => text.Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal);
}
