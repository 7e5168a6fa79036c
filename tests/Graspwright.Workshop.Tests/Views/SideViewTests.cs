using System.Xml.Linq;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

public sealed class SideViewTests
{
    private const double Degree = SampleRun.Degree;

    private static readonly RunResult Run = SampleRun.Run();

    private static Picture View(double[] row, HeldObject? held = null, DriveModel? drive = null) =>
        SideView.Draw(drive ?? SampleRun.Drive(), held ?? SampleRun.Mug, Run, row, "The hand holds the mug.", SampleRun.Palm);

    private static IEnumerable<T> On<T>(Picture picture, string layer)
        where T : Mark => picture.Marks.OfType<T>().Where(m => m.Layer == layer);

    private static double Reduction(Picture picture)
    {
        string words = On<TextMark>(picture, "scale").Single(t => t.Text.StartsWith("Scale 1:", StringComparison.Ordinal)).Text;
        return double.Parse(words[8..].Split(". ")[0], System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Is_to_the_scale_it_states()
    {
        Picture picture = View(Run.AtEnd);
        double reduction = Reduction(picture);
        Assert.Equal(30 / reduction, On<CircleMark>(picture, "object").Single().RadiusMm, 6);
        IReadOnlyList<Place> centreLine = On<PolylineMark>(picture, "nearest finger").Single(m => !m.Closed).Places;
        double[] segments = [45, 25, 20];
        for (int j = 0; j < 3; j++)
        {
            Assert.Equal(segments[j] / reduction, centreLine[j].DistanceTo(centreLine[j + 1]), 6);
        }

        PolylineMark[] bar = [.. On<PolylineMark>(picture, "scale").Where(m => m.Places.Count == 4)];
        Assert.Equal(50 / reduction, bar.SelectMany(m => m.Places).Max(p => p.X) - bar.SelectMany(m => m.Places).Min(p => p.X), 6);
    }

    [Fact]
    public void The_fingertip_lies_where_the_row_puts_it()
    {
        Picture picture = View(Run.AtEnd);
        Place mcp = On<PolylineMark>(picture, "nearest finger").Single(m => !m.Closed).Places[0], tip = On<PolylineMark>(picture, "nearest finger").Single(m => !m.Closed).Places[3];
        int x = Run.Layout.TipX(0);
        Assert.Equal(1000 * (Run.AtEnd[x] - 0.095) / Reduction(picture), tip.X - mcp.X, 6);
        Assert.Equal(1000 * Run.AtEnd[x + 1] / Reduction(picture), tip.Y - mcp.Y, 6);
    }

    [Theory]
    [InlineData(DrivingDirection.Flexion, 1)]
    [InlineData(DrivingDirection.Extension, -1)]
    public void The_forearm_turns_by_the_wrist_angle(DrivingDirection direction, int sign)
    {
        Picture picture = View(Run.AtEnd, drive: SampleRun.Drive(direction));
        List<LineMark> arms = [.. On<LineMark>(picture, "forearm")];
        double turned = arms[1].From.DirectionTo(arms[1].To) - arms[0].From.DirectionTo(arms[0].To);
        Assert.Equal(0, Math.IEEERemainder(turned - sign * 35 * Degree, Math.Tau), 9);
    }

    [Fact]
    public void The_crank_turns_so_that_the_pull_link_keeps_its_length()
    {
        // The exact crank angle of a rigid link at 10° of wrist, by bisection on the link's length; the drawn link must then be as long as at rest.
        DriveModel drive = SampleRun.Drive();
        double Length(double theta, double phi) => (drive.Crank.Fulcrum + drive.Crank.Input.Rotated(phi) - drive.PullLink.Anchor.Rotated(theta)).Length;
        double low = 0, high = 60 * Degree, rest = Length(0, 0);
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Length(10 * Degree, middle) > rest ? (middle, high) : (low, middle);
        }

        double[] row = (double[])Run.Closing[10].Clone();
        row[TraceLayout.Phi] = low;
        Picture picture = View(row);
        LineMark link = On<LineMark>(picture, "links").First();
        Assert.InRange(low, 10 * Degree, 40 * Degree);
        Assert.Equal(1000 * rest / Reduction(picture), link.From.DistanceTo(link.To), 6);
    }

    [Fact]
    public void Arrows_are_as_long_as_their_force_and_carry_its_size()
    {
        Picture picture = View(Run.AtEnd);
        string scale = On<TextMark>(picture, "scale").Single(t => t.Text.Contains("N per mm", StringComparison.Ordinal)).Text;
        double newtonsPerMm = double.Parse(scale.Split("Arrows: ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(8, On<TextMark>(picture, "forces").Count(t => t.Text.EndsWith(" 7.5", StringComparison.Ordinal)));
        LineMark shaft = On<LineMark>(picture, "forces").First(l => l.Pen.Ink == Ink.Accent);
        PolylineMark head = On<PolylineMark>(picture, "forces").First();
        Assert.Equal(7.5 / newtonsPerMm, shaft.From.DistanceTo(head.Places[0]), 6);
        CircleMark mug = On<CircleMark>(picture, "object").Single();
        Assert.Equal(mug.RadiusMm, mug.Centre.DistanceTo(shaft.From), 6);
        Assert.Equal(mug.RadiusMm - 7.5 / newtonsPerMm, mug.Centre.DistanceTo(head.Places[0]), 6);
    }

    [Fact]
    public void A_face_is_pressed_against_its_normal()
    {
        var face = new Face(new(0.10, -0.06), Math.PI / 2);
        Picture picture = View(Run.AtEnd, face);
        Assert.All(On<PolylineMark>(picture, "forces"), head => Assert.True(head.Places[0].Y < head.Places[1].Y));
        Assert.Equal(8, On<PolylineMark>(picture, "forces").Count());
    }

    [Fact]
    public void Nothing_held_and_no_force_is_drawn_and_said()
    {
        Picture picture = View(Run.Closing[0], HeldObject.None);
        Assert.Empty(On<Mark>(picture, "object"));
        Assert.Empty(On<Mark>(picture, "forces"));
        Assert.Contains(On<TextMark>(picture, "scale"), t => t.Text.EndsWith("No contact force.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(35)]
    public void Texts_stay_on_the_sheet_and_clear_of_one_another(int row)
    {
        AssertClear(View(Run.Closing[row]));
        AssertClear(SideViewSeries.Draw(SampleRun.Drive(), SampleRun.Mug, Run, [Run.Closing[row], Run.Closing[5], Run.Closing[25], Run.AtEnd], "Four states of closing.", SampleRun.Palm));
    }

    internal static void AssertClear(Picture picture)
    {
        var boxes = picture.Marks.OfType<TextMark>().Select(m =>
        {
            // Lettering keeps to the wide side by about a tenth.
            double width = 0.92 * Lettering.WidthMm(m.Text, m.HeightMm, m.Strong), left = m.At.X - m.Across switch { Across.Middle => width / 2, Across.Right => width, _ => 0 };
            double bottom = m.At.Y - m.Level switch { Level.Middle => m.HeightMm / 2, Level.Top => m.HeightMm, _ => 0 };
            return (Left: left, Bottom: bottom, Right: left + width, Top: bottom + m.HeightMm, m.Text);
        }).ToList();
        Assert.All(boxes, b => Assert.True(b.Left >= 0 && b.Bottom >= 0 && b.Right <= picture.WidthMm && b.Top <= picture.HeightMm, $"'{b.Text}' leaves the sheet."));
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int k = i + 1; k < boxes.Count; k++)
            {
                bool apart = boxes[i].Right <= boxes[k].Left || boxes[k].Right <= boxes[i].Left || boxes[i].Top <= boxes[k].Bottom || boxes[k].Top <= boxes[i].Bottom;
                Assert.True(apart, $"'{boxes[i].Text}' lies over '{boxes[k].Text}'.");
            }
        }
    }

    [Fact]
    public void The_series_keeps_one_scale_on_one_A4_sheet()
    {
        Picture picture = SideViewSeries.Draw(SampleRun.Drive(), SampleRun.Mug, Run, [Run.Closing[0], Run.Closing[15], Run.Closing[21], Run.AtEnd], "Four states.", SampleRun.Palm);
        Assert.Equal((210, 297), (picture.WidthMm, picture.HeightMm));
        Assert.Equal(4, On<CircleMark>(picture, "object").Count());
        Assert.Single(On<CircleMark>(picture, "object").Select(c => Math.Round(c.RadiusMm, 9)).Distinct());
        Assert.Throws<ArgumentException>(() => SideViewSeries.Draw(SampleRun.Drive(), SampleRun.Mug, Run, [], "None."));
    }

    [Fact]
    public void Stops_are_named_in_words()
    {
        DriveModel drive = SampleRun.Drive();
        Assert.Equal("Stops acting: the slot pin is at its far end.", StopWords.Sentence(drive, Run.Layout, Run.AtEnd));
        Assert.Equal("No stop acts.", StopWords.Sentence(drive, Run.Layout, Run.Closing[5]));
        double[] row = (double[])Run.AtEnd.Clone();
        // Order: φ, d, s, three tilts, three joints a finger. Bar B low, index MCP low, little DIP high.
        row[TraceLayout.Stops] = Math.Pow(2, 10) + Math.Pow(2, 12) + Math.Pow(2, 2 * 17 + 1);
        Assert.Equal("Stops acting: bar B is against its tilt stop; on their open stops: index MCP; bent to their stops: little DIP.", StopWords.Sentence(drive, Run.Layout, row));
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes_and_well_formed_markup()
    {
        string svg = SvgWriter.Write(View(Run.AtEnd));
        Assert.Equal(svg, SvgWriter.Write(View(SampleRun.Run().AtEnd)));
        Assert.NotNull(XDocument.Parse(svg).Root);
    }

    [Fact]
    public void The_nearest_recorded_state_is_found() => Assert.Equal(21 * Degree, SideView.Nearest(Run, 21.3 * Degree)[TraceLayout.Theta], 12);

    [Fact]
    public void A_bar_tilts_against_closing_at_its_first_end_when_its_tilt_is_positive()
    {
        double[] row = (double[])Run.AtEnd.Clone();
        row[TraceLayout.Tilt(0)] = 20 * Degree;
        LineMark bar = On<LineMark>(View(row), "bars").First(l => l.Pen.WidthMm > 0.6);
        // x1 = x − l1 sin t: the first end (thumb side, up) lags behind; closing runs to the left here.
        Assert.True(bar.From.Y > bar.To.Y && bar.From.X > bar.To.X);
        Assert.Equal(Math.Tan(20 * Degree), (bar.From.X - bar.To.X) / (bar.From.Y - bar.To.Y), 9);
    }
}
