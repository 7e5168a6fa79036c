using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;

namespace Graspwright.Drawing.Tests;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static XElement Root(Picture picture) => XDocument.Parse(SvgWriter.Write(picture)).Root!;

    internal static Picture Everything(string text = "θ < 5° & \"so on\"")
    {
        var picture = new Picture(120, 80, "All marks", "One mark of each kind.");
        picture.OnLayer("lines").Line(new(10, 10), new(110, 10), Pen.Main);
        picture.Polyline([new(10, 20), new(20, 30), new(30, 20)], new Pen(0.3, Ink.Accent, Dash.DashDot));
        picture.Outline([new(40, 20), new(50, 20), new(45, 30)], Pen.Thin, Ink.Wash);
        picture.OnLayer("round").Circle(new(70, 25), 5, Pen.Thin, Ink.Paper);
        picture.Arc(new(90, 25), 5, 0, Math.PI / 2, Pen.Thin);
        picture.Capsule(new(10, 50), new(40, 60), 4, Pen.Thin);
        picture.OnLayer("words").Text(new(60, 50), text, 3.5, Across.Middle, Level.Middle);
        picture.Text(new(60, 60), "turned", 2.5, angleRadians: Math.PI / 2);
        picture.Arrow(new(80, 50), new(80, 70), Pen.Main);
        picture.Point(new(100, 60));
        return picture;
    }

    [Fact]
    public void Is_well_formed_and_states_its_size_in_millimetres()
    {
        XElement root = Root(Everything());
        Assert.Equal("120mm", root.Attribute("width")!.Value);
        Assert.Equal("80mm", root.Attribute("height")!.Value);
        Assert.Equal("0 0 120 80", root.Attribute("viewBox")!.Value);
        Assert.Equal("All marks", root.Element(Svg + "title")!.Value);
        Assert.Equal("One mark of each kind.", root.Element(Svg + "desc")!.Value);
        string[] ids = root.Attribute("aria-labelledby")!.Value.Split(' ');
        Assert.Equal(ids, root.Elements().Select(e => e.Attribute("id")?.Value).Where(i => i is not null));
    }

    [Fact]
    public void Draws_one_unit_to_the_millimetre_with_y_up()
    {
        var picture = new Picture(100, 50, "t", "d");
        picture.Circle(new(20, 10), 3, Pen.Thin);
        XElement circle = Root(picture).Descendants(Svg + "circle").Single();
        Assert.Equal(["20", "40", "3"], new[] { "cx", "cy", "r" }.Select(a => circle.Attribute(a)!.Value));
    }

    [Fact]
    public void An_arc_of_a_quarter_runs_anticlockwise_on_the_paper()
    {
        var picture = new Picture(100, 50, "t", "d");
        picture.Arc(new(20, 20), 10, 0, Math.PI / 2, Pen.Thin);
        // SVG 1.1, 8.3.8: large-arc 0; sweep 0 = angle falling in the y-down frame, anticlockwise as seen.
        Assert.Equal("M30 30A10 10 0 0 0 20 20", Root(picture).Descendants(Svg + "path").Single().Attribute("d")!.Value);
    }

    [Fact]
    public void Keeps_text_as_text_and_its_capitals_at_their_height()
    {
        XElement text = Root(Everything()).Descendants(Svg + "text").First();
        Assert.Equal("θ < 5° & \"so on\"", text.Value);
        Assert.Equal(3.5, Lettering.CapitalShare * double.Parse(text.Attribute("font-size")!.Value, CultureInfo.InvariantCulture), 0.001);
        Assert.EndsWith("sans-serif", text.Parent!.Attribute("font-family")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Gives_the_same_bytes_whatever_the_culture()
    {
        string before = SvgWriter.Write(Everything());
        CultureInfo kept = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = ",", NegativeSign = "~" } };
            Assert.Equal(before, SvgWriter.Write(Everything()));
        }
        finally
        {
            CultureInfo.CurrentCulture = kept;
        }
    }

    [Fact]
    public void Any_text_gives_well_formed_markup() =>
        Gen.String.Sample(s => XDocument.Parse(SvgWriter.Write(Everything(s), s)).Root is not null);

    [Fact]
    public void Prints_in_ink_without_a_style_sheet()
    {
        XElement root = Root(Everything());
        Assert.All(root.Descendants(Svg + "path"), p => Assert.True(p.Attribute("stroke") is not null || p.Attribute("fill") is not null));
        string style = root.Element(Svg + "style")!.Value;
        Assert.StartsWith("@media screen and (prefers-color-scheme:dark){", style, StringComparison.Ordinal);
        Assert.Equal(style.Count(c => c == '{'), style.Count(c => c == '}'));
        Assert.Equal(style.Length - 1, style.LastIndexOf('}'));
    }

    [Fact]
    public void Refuses_a_place_that_is_not_a_number()
    {
        var picture = new Picture(10, 10, "t", "d");
        picture.Line(new(double.NaN, 0), new(1, 1), Pen.Thin);
        Assert.Throws<InvalidOperationException>(() => SvgWriter.Write(picture));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Picture(double.NaN, 10, "t", "d"));
    }

    [Fact]
    public void A_picture_put_into_another_keeps_its_shape()
    {
        var outer = new Picture(200, 200, "t", "d");
        outer.Insert(Everything(), 10, 20);
        Assert.Equal(Everything().Marks.Count, outer.Marks.Count);
        LineMark line = outer.Marks.OfType<LineMark>().First();
        Assert.Equal((new Place(20, 30), new Place(120, 30)), (line.From, line.To));
    }
}
