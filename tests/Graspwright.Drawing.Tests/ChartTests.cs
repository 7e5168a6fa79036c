using System.Xml.Linq;
using CsCheck;
using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;

namespace Graspwright.Drawing.Tests;

public sealed class ChartTests
{
    private static readonly double[] Angles = [.. Enumerable.Range(0, 39).Select(i => (double)i)];

    private static LineChart Chart(int curves = 2) => new()
    {
        Sentence = "The grip rises at 15°.",
        XTitle = "wrist angle, °",
        YTitle = "grip, N",
        Series = [.. Enumerable.Range(1, curves).Select(k => new Series("curve " + k, Angles, [.. Angles.Select(a => k * a)], (Dash)(k % 5)))],
        Events = [new(15, "first touch 15.0°"), new(15.5, "all touch 15.5°"), new(16, "shift starts 16.0°"), new(37.9, "effort limit 37.9°")],
    };

    [Fact]
    public void Ticks_are_round_and_enclose_the_extent() => Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[1e-6, 1e6], Gen.Int[2, 12]).Sample((low, span, most) =>
    {
        Ticks ticks = Ticks.Enclosing(low, low + span, most);
        double mantissa = ticks.Step / Math.Pow(10, Math.Floor(Math.Log10(ticks.Step) + 1e-9));
        Assert.Contains(Math.Round(mantissa, 6), new[] { 1.0, 2, 5 });
        Assert.True(ticks.Low <= low + 0.01 * ticks.Step && ticks.High >= low + span - 0.01 * ticks.Step);
        Assert.InRange(ticks.Values.Count, 2, most + 1);
    });

    [Theory]
    [InlineData(0, 38, 8, "0 5 10 15 20 25 30 35 40")]
    [InlineData(0, 0.7, 4, "0.0 0.2 0.4 0.6 0.8")]
    [InlineData(-3, 3, 4, "−4 −2 0 2 4")]
    [InlineData(5, 5, 4, "4.4 4.6 4.8 5.0 5.2 5.4 5.6")]
    public void Ticks_of_known_axes(double low, double high, int most, string labels)
    {
        Ticks ticks = Ticks.Enclosing(low, high, low == high ? 6 : most);
        Assert.Equal(labels, string.Join(' ', ticks.Values.Select(ticks.Label)));
    }

    [Fact]
    public void An_axis_of_no_numbers_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Ticks.Enclosing(double.NaN, 1, 5));

    [Fact]
    public void Texts_stay_on_the_sheet_and_clear_of_one_another()
    {
        Picture picture = ChartPicture.Stack("One sentence.", "title", [Chart(5), Chart(3) with { Events = [] }]);
        List<(double Left, double Bottom, double Right, double Top, string Text)> boxes = [.. picture.Marks.OfType<TextMark>().Select(Box)];
        Assert.All(boxes, b => Assert.True(b.Left >= 0 && b.Bottom >= 0 && b.Right <= picture.WidthMm && b.Top <= picture.HeightMm, b.Text));
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int k = i + 1; k < boxes.Count; k++)
            {
                bool apart = boxes[i].Right <= boxes[k].Left || boxes[k].Right <= boxes[i].Left || boxes[i].Top <= boxes[k].Bottom || boxes[k].Top <= boxes[i].Bottom;
                Assert.True(apart, $"'{boxes[i].Text}' lies over '{boxes[k].Text}'.");
            }
        }
    }

    internal static (double Left, double Bottom, double Right, double Top, string Text) Box(TextMark m)
    {
        double width = Lettering.WidthMm(m.Text, m.HeightMm, m.Strong);
        double left = m.At.X - m.Across switch { Across.Middle => width / 2, Across.Right => width, _ => 0 };
        double bottom = m.At.Y - m.Level switch { Level.Middle => m.HeightMm / 2, Level.Top => m.HeightMm, _ => 0 };
        return (left, bottom, left + width, bottom + m.HeightMm, m.Text);
    }

    [Fact]
    public void Curves_are_told_apart_without_colour()
    {
        Picture picture = ChartPicture.Draw(Chart(5));
        List<PolylineMark> curves = [.. picture.Marks.OfType<PolylineMark>().Where(m => m.Layer == "curves")];
        Assert.Equal(5, curves.Select(c => c.Pen!.Value.Dash).Distinct().Count());
        Assert.Equal(5, picture.Marks.OfType<TextMark>().Count(t => t.Layer == "labels"));
    }

    [Fact]
    public void A_curve_is_drawn_to_the_scale_of_its_axes()
    {
        LineChart chart = Chart(1) with { Events = [], XExtent = (0, 40) };
        Picture picture = ChartPicture.Draw(chart);
        IReadOnlyList<Place> curve = picture.Marks.OfType<PolylineMark>().Single(m => m.Layer == "curves").Places;
        Place At(string label, bool across) => picture.Marks.OfType<TextMark>().Single(t => t.Layer == "axes" && t.Text == label && (t.Across == Across.Middle) == across).At;
        Assert.Equal(At("20", across: true).X, curve[20].X, 6);
        Assert.Equal(At("20", across: false).Y, curve[20].Y, 6);
    }

    [Fact]
    public void Gaps_break_the_curve_and_an_empty_chart_is_refused()
    {
        double[] gapped = [.. Angles.Select(a => a is > 10 and < 12 ? double.NaN : a)];
        Assert.Equal(2, ChartPicture.Draw(Chart() with { Series = [new("a", Angles, gapped)] }).Marks.OfType<PolylineMark>().Count(m => m.Layer == "curves"));
        Assert.Throws<ArgumentException>(() => ChartPicture.Draw(Chart() with { Series = [] }));
        Assert.Throws<ArgumentException>(() => ChartPicture.Draw(Chart() with { Series = [new("a", [1, 2], [1])] }));
    }

    [Fact]
    public void Describes_itself_for_those_who_cannot_see_it()
    {
        XElement root = XDocument.Parse(SvgWriter.Write(ChartPicture.Draw(Chart()))).Root!;
        string description = root.Elements().Single(e => e.Name.LocalName == "desc").Value;
        Assert.Equal("The grip rises at 15°. grip, N over wrist angle, °: curve 1 (dashed), curve 2 (dotted).", description);
    }

    [Theory]
    [InlineData(TerminalCharacters.Braille, 1)]
    [InlineData(TerminalCharacters.Plain, 1)]
    [InlineData(TerminalCharacters.Braille, 2)]
    [InlineData(TerminalCharacters.Plain, 2)]
    public void A_terminal_chart_keeps_to_its_width(TerminalCharacters characters, int curves)
    {
        string text = TerminalChart.Write(Chart(curves), characters);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= TerminalChart.Width, line));
        Assert.DoesNotContain('\u001b', text);
        Assert.Contains("a first touch 15.0°", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plain_terminal_chart_puts_the_curve_where_it_belongs()
    {
        var chart = new LineChart { XTitle = "x", YTitle = "y", Series = [new("a", [0, 10], [0, 10])], XExtent = (0, 10) };
        string[] lines = TerminalChart.Write(chart, TerminalCharacters.Plain, 11).Split('\n');
        string[] plot = lines[1..12];
        Assert.StartsWith(" 10 +", plot[0], StringComparison.Ordinal);
        Assert.EndsWith("*", plot[0], StringComparison.Ordinal);
        Assert.StartsWith("  0 +*", plot[10], StringComparison.Ordinal);
        int middle = plot[5].IndexOf('*', StringComparison.Ordinal) - 5;
        Assert.InRange(middle, 27, 36);
    }

    [Fact]
    public void Spread_keeps_order_gap_and_bounds() => Gen.Double[0, 100].Array[1, 12].Sample(a =>
    {
        double[] wanted = [.. a.Order()];
        double[] at = Lettering.Spread(wanted, 4, 0, 100);
        for (int i = 1; i < at.Length; i++)
        {
            Assert.True(at[i] - at[i - 1] >= 4 - 1e-9);
        }

        Assert.True(at[0] >= -1e-9 && at[^1] <= 100 + 1e-9);
    });
}
